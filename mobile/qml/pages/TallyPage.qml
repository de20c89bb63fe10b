pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// One gesture, one tree: press a species, slide to the diameter, lift. Or tap the one, then the other.
Item {
    id: page

    required property AppModel app
    required property Workspace workspace
    readonly property TallyViewModel viewModel: page.workspace.tally

    Keys.onPressed: event => {
        if (event.key === Qt.Key_VolumeUp && false) {
            page.viewModel.again();
            event.accepted = true;
        } else if (event.key === Qt.Key_VolumeDown && false) {
            page.workspace.desk.undo();
            event.accepted = true;
        }
    }

    RowLayout {
        anchors.fill: parent
        spacing: Theme.gap
        layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

        ColumnLayout {
            spacing: 0

            ReadingBar {
                Layout.fillWidth: true
                viewModel: page.viewModel
            }
            TallyField {
                id: field

                Layout.fillWidth: true
                Layout.fillHeight: true
                viewModel: page.viewModel
                
            }
            LastTrees {
                Layout.fillWidth: true
                Layout.leftMargin: Theme.edge
                Layout.rightMargin: Theme.edge
                visible: !Theme.wide
                viewModel: page.viewModel
                onEditAsked: row => page.edit(row)
            }
            TallyActions {
                Layout.fillWidth: true
                visible: !Theme.wide
                columns: Theme.phone ? 3 : 6
                viewModel: page.viewModel
            }
        }

        ColumnLayout {
            Layout.preferredWidth: Theme.sideWidth
            Layout.fillHeight: true
            Layout.topMargin: Theme.pad
            Layout.leftMargin: Theme.leftHand ? Theme.edge : 0
            Layout.rightMargin: Theme.leftHand ? 0 : Theme.edge
            visible: Theme.wide
            spacing: Theme.pad

            LastTrees {
                Layout.fillWidth: true
                viewModel: page.viewModel
                onEditAsked: row => page.edit(row)
            }
            Item {
                Layout.fillHeight: true
            }
            TallyActions {
                Layout.fillWidth: true
                columns: 2
                viewModel: page.viewModel
            }
        }
    }

    function edit(row) {
    }

    function openKeypad() {}
    function openBorder() {}
    function openSeedlings() {}
    function plotDone() {}
}
