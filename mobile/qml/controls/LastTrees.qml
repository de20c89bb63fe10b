pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// The last trees, newest first; each opens by one tap.
GridLayout {
    id: list

    required property TallyViewModel viewModel
    required property PointViewModel point
    readonly property bool counts: list.point.counting && list.viewModel.lastTrees.length === 0

    signal editAsked(int row)
    signal pointAsked

    columnSpacing: 0
    rowSpacing: 0

    Repeater {
        model: list.counts ? list.point.countedLately : list.viewModel.lastTrees

        TapButton {
            required property int index
            required property string modelData

            Layout.fillWidth: true
            Layout.preferredWidth: 1
            lines: 3
            letters: Theme.phone ? Theme.small : Theme.body
            text: modelData
            help: list.counts ? qsTr("Opens what was counted") : qsTr("Opens this tree")
            onClicked: list.counts ? list.pointAsked() : list.editAsked(index)
        }
    }
}
