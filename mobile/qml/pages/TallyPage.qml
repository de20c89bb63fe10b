pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// One gesture, one tree: press a species, slide to the diameter, lift. Or tap the one, then the other.
FocusScope {
    id: page

    required property AppModel app
    required property Workspace workspace
    readonly property TallyViewModel viewModel: page.workspace.tally

    function edit(row) {
        page.workspace.chooseTree(row);
        tree.open();
    }

    focus: true
    Keys.onPressed: event => {
        if (event.key === Qt.Key_VolumeUp && page.app.settings.volumeKeys) {
            page.viewModel.again();
            event.accepted = true;
        } else if (event.key === Qt.Key_VolumeDown && page.app.settings.volumeKeys) {
            page.workspace.desk.undo();
            event.accepted = true;
        }
    }

    RowLayout {
        anchors.fill: parent
        spacing: Theme.pad
        layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

        ColumnLayout {
            spacing: 0

            ReadingBar {
                Layout.fillWidth: true
                viewModel: page.viewModel
            }
            TallyField {
                Layout.fillWidth: true
                Layout.fillHeight: true
                viewModel: page.viewModel
                onOtherAsked: search.open()
            }
            LastTrees {
                Layout.fillWidth: true
                // Held free before the first tree: cells must not move under a finger.
                Layout.fillHeight: false
                Layout.minimumHeight: Theme.touch
                Layout.topMargin: Theme.gap
                visible: !Theme.wide
                columns: 3
                viewModel: page.viewModel
                onEditAsked: row => page.edit(row)
            }
            TallyActions {
                Layout.fillWidth: true
                Layout.fillHeight: false
                visible: !Theme.wide
                brief: Theme.phone
                columns: Theme.phone ? 3 : 6
                viewModel: page.viewModel
                onKeypadAsked: keypad.open()
                onBorderAsked: border.open()
                onSeedlingsAsked: seedlings.open()
                onDoneAsked: page.app.page = AppModel.Walk
                onMoreAsked: more.open()
            }
        }

        ColumnLayout {
            Layout.fillWidth: false
            Layout.preferredWidth: Theme.sideWidth
            Layout.fillHeight: true
            Layout.topMargin: Theme.pad
            visible: Theme.wide
            spacing: 0

            Words {
                Layout.fillWidth: true
                text: page.viewModel.plotName
                font.bold: true
            }
            LastTrees {
                Layout.fillWidth: true
                Layout.fillHeight: false
                columns: 1
                viewModel: page.viewModel
                onEditAsked: row => page.edit(row)
            }
            Item {
                Layout.fillHeight: true
            }
            TallyActions {
                Layout.fillWidth: true
                Layout.fillHeight: false
                viewModel: page.viewModel
                onKeypadAsked: keypad.open()
                onBorderAsked: border.open()
                onSeedlingsAsked: seedlings.open()
                onDoneAsked: page.app.page = AppModel.Walk
            }
        }
    }

    SpeciesSheet {
        id: search

        viewModel: page.workspace.search
        onChosen: row => page.workspace.pinFound(row)
    }
    KeypadSheet {
        id: keypad

        title: page.viewModel.pinnedName !== "" ? page.viewModel.pinnedName : qsTr("No species is pinned")
        note: page.viewModel.doubt !== "" ? page.viewModel.doubt : page.viewModel.reading
        reading: page.viewModel.readDigits(keypad.digits)
        onEntered: digits => page.viewModel.tallyDigits(digits)
    }
    TreeSheet {
        id: tree

        viewModel: page.workspace.tree
        onSpeciesAsked: other.open()
    }
    SpeciesSheet {
        id: other

        viewModel: page.workspace.search
        onChosen: row => page.workspace.setTreeSpecies(row)
    }
    BorderSheet {
        id: border

        viewModel: page.workspace.border
    }
    SeedlingSheet {
        id: seedlings

        viewModel: page.workspace.seedlings
        onSpeciesAsked: seedling.open()
    }
    SpeciesSheet {
        id: seedling

        viewModel: page.workspace.search
        onChosen: row => page.workspace.addSeedlingSpecies(row)
    }
    Sheet {
        id: more

        title: page.viewModel.plotName

        TallyActions {
            Layout.fillWidth: true
            columns: 1
            inSheet: true
            viewModel: page.viewModel
            onBorderAsked: {
                more.close();
                border.open();
            }
            onSeedlingsAsked: {
                more.close();
                seedlings.open();
            }
            onDoneAsked: {
                more.close();
                page.app.page = AppModel.Walk;
            }
        }
        Item {
            Layout.fillHeight: true
        }
    }
}
