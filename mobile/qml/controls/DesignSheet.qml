pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// How the plots of a cruise are laid out.
Sheet {
    id: sheet

    required property DesignViewModel design

    title: qsTr("Design")

    Connections {
        target: sheet.design

        function onSaved() {
            sheet.close();
        }
    }

    ProblemWords {
        Layout.fillWidth: true
        problem: sheet.design.problem
    }
    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true

        Choices {
            Layout.fillWidth: true
            label: qsTr("Which trees are in")
            columns: Theme.phone ? 1 : 2
            options: sheet.design.kinds
            chosen: sheet.design.kind
            onPicked: row => sheet.design.kind = row
        }
        Choices {
            Layout.fillWidth: true
            label: sheet.design.sizeLabel
            columns: Theme.phone ? 3 : 5
            options: sheet.design.sizes
            chosen: sheet.design.size
            onPicked: row => sheet.design.size = row
        }
        LabelledLine {
            id: typed

            Layout.fillWidth: true
            label: qsTr("or another")
            text: sheet.design.typed
            inputMethodHints: Qt.ImhFormattedNumbersOnly
            onEdited: text => sheet.design.typed = text
        }
        Choices {
            Layout.fillWidth: true
            label: qsTr("Smallest tree tallied (DBH)")
            columns: Theme.phone ? 2 : 4
            options: sheet.design.smallest
            chosen: sheet.design.least
            onPicked: row => sheet.design.least = row
        }
        Choices {
            Layout.fillWidth: true
            label: qsTr("Seedlings")
            columns: Theme.phone ? 1 : 2
            options: sheet.design.seedlingPlots
            chosen: sheet.design.seedlings
            onPicked: row => sheet.design.seedlings = row
        }
        Words {
            Layout.fillWidth: true
            text: qsTr("All plots of the cruise are laid out so: %1").arg(sheet.design.summary)
        }
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Save the design")
        main: true
        large: true
        enabled: sheet.design.summary !== ""
        onClicked: sheet.design.save()
    }
}
