pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Why a plot is given up: one tap for a common reason, or typed.
Sheet {
    id: sheet

    required property WalkViewModel viewModel

    function skip(reason: string) {
        sheet.viewModel.skip(reason);
        sheet.close();
    }

    title: qsTr("Skip %1").arg(sheet.viewModel.name)

    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true

        Words {
            Layout.fillWidth: true
            text: qsTr("A plot with no tree on it is not skipped: call it empty, and it counts as zero. Skip only what cannot be worked.")
        }
        Choices {
            Layout.fillWidth: true
            label: qsTr("Why?")
            columns: Theme.phone ? 1 : 2
            options: sheet.viewModel.reasons
            onPicked: row => sheet.skip(sheet.viewModel.reasons[row])
        }
        LabelledLine {
            id: other

            Layout.fillWidth: true
            label: qsTr("Another reason")
            onEntered: sheet.skip(other.typed)
        }
        TapButton {
            Layout.fillWidth: true
            text: qsTr("Skip for this reason")
            enabled: other.typed !== ""
            onClicked: sheet.skip(other.typed)
        }
    }
}
