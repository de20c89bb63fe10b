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
    readonly property StandNowViewModel standNow: page.workspace.standNow

    function edit(row) {
        page.workspace.chooseTree(row);
        tree.open();
    }

    // For wet or frozen glass: keys of the device, whatever has the focus.
    Shortcut {
        sequence: "Volume Up"
        enabled: page.app.settings.volumeKeys
        autoRepeat: false
        onActivated: page.viewModel.again()
    }
    Shortcut {
        sequence: "Volume Down"
        enabled: page.app.settings.volumeKeys
        autoRepeat: false
        onActivated: page.workspace.desk.undo()
    }
    Connections {
        target: page.viewModel

        // It is on disk: on to the next tree's species. What was refused stays open with its reason.
        function onRecorded() {
            keypad.close();
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
                point: page.workspace.point
                // Beside the button of a count or measure point it would be cut.
                stand: Theme.phone || page.workspace.point.kind !== "" ? "" : page.standNow.text
                onPointAsked: point.open()
            }
            TallyField {
                id: field

                Layout.fillWidth: true
                Layout.fillHeight: true
                viewModel: page.viewModel
                typed: page.app.settings.typed && !page.workspace.point.counting
                fingerBeside: below.fingerHere || beside.fingerHere
                onOtherAsked: search.open()
                onKeypadAsked: keypad.open()
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
                point: page.workspace.point
                onEditAsked: row => page.edit(row)
                onPointAsked: point.open()
            }
            TallyActions {
                id: below

                Layout.fillWidth: true
                Layout.fillHeight: false
                visible: !Theme.wide
                brief: Theme.phone
                columns: Theme.phone ? (page.workspace.point.counting ? 2 : 3) : (page.workspace.point.counting ? 4 : 6)
                viewModel: page.viewModel
                point: page.workspace.point
                typed: page.app.settings.typed
                fingerOnField: field.fingerHere
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
                point: page.workspace.point
                onEditAsked: row => page.edit(row)
                onPointAsked: point.open()
            }
            Item {
                Layout.fillHeight: true
            }
            TallyActions {
                id: beside

                Layout.fillWidth: true
                Layout.fillHeight: false
                columns: page.workspace.point.counting ? 2 : 3
                viewModel: page.viewModel
                point: page.workspace.point
                typed: page.app.settings.typed
                fingerOnField: field.fingerHere
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
        onChosen: row => {
            page.workspace.pinFound(row);
            field.askSize();
        }
    }
    KeypadSheet {
        id: keypad

        title: page.viewModel.pinnedName !== "" ? page.viewModel.pinnedName : qsTr("No species is pinned")
        note: page.viewModel.doubt !== "" ? page.viewModel.doubt : page.viewModel.reading
        reading: page.viewModel.readDigits(keypad.digits)
        cornerText: qsTr("Always keypad")
        cornerOn: page.app.settings.typed
        onCorner: page.app.settings.typed = !page.app.settings.typed
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
    PointSheet {
        id: point

        point: page.workspace.point
    }
    Sheet {
        id: more

        atTree: true
        title: page.viewModel.plotName

        StandNow {
            Layout.fillWidth: true
            viewModel: page.standNow
        }
        TallyActions {
            Layout.fillWidth: true
            columns: 1
            inSheet: true
            viewModel: page.viewModel
            point: page.workspace.point
            onPointAsked: {
                more.close();
                point.open();
            }
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
