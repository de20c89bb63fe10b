pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// The last trees, newest first; each opens by one tap.
GridLayout {
    id: list

    required property TallyViewModel viewModel

    signal editAsked(int row)

    columnSpacing: 0
    rowSpacing: 0

    Repeater {
        model: list.viewModel.lastTrees

        TapButton {
            required property int index
            required property string modelData

            Layout.fillWidth: true
            Layout.preferredWidth: 1
            lines: 3
            letters: Theme.phone ? Theme.small : Theme.body
            text: modelData
            help: qsTr("Opens this tree")
            onClicked: list.editAsked(index)
        }
    }
}
