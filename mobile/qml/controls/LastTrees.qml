pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// The last trees, newest first; each opens by one tap.
ColumnLayout {
    id: list

    required property TallyViewModel viewModel

    signal editAsked(int row)

    spacing: Theme.pad

    Words {
        visible: !Theme.phone
        text: list.viewModel.plotName
        font.bold: true
    }
    Repeater {
        model: list.viewModel.lastTrees

        TapButton {
            required property int index
            required property string modelData

            Layout.fillWidth: true
            small: true
            text: modelData
            help: qsTr("Opens this tree")
            onClicked: list.editAsked(index)
        }
    }
}
