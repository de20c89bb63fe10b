pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Naming a tree of the marking walk: a crop tree, or a neighbour and how it stands.
Sheet {
    id: sheet

    required property WalkTreeViewModel tree

    title: sheet.tree.title

    Connections {
        target: sheet.tree

        function onSaved() {
            sheet.close();
        }
    }

    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true

        RowLayout {
            Layout.fillWidth: true
            spacing: Theme.gap

            Words {
                text: qsTr("Tag")
            }
            TextLine {
                id: tag

                Layout.fillWidth: true
                Accessible.name: qsTr("Tag")
                text: sheet.tree.tag
                onTextEdited: sheet.tree.tag = tag.text
            }
        }
        Words {
            Layout.fillWidth: true
            visible: text !== ""
            text: sheet.tree.known !== "" ? qsTr("This tag hangs on %1 already: that tree is meant.").arg(sheet.tree.known) : ""
        }
        TapButton {
            Layout.fillWidth: true
            visible: sheet.tree.known === ""
            text: sheet.tree.species !== "" ? sheet.tree.species : qsTr("Species")
            checked: sheet.tree.species !== ""
            onClicked: species.open()
        }
        TapButton {
            Layout.fillWidth: true
            visible: sheet.tree.known === ""
            text: sheet.tree.dbh !== "" ? sheet.tree.dbh : qsTr("Diameter (DBH)")
            checked: sheet.tree.dbh !== ""
            onClicked: keypad.open()
        }
        ChipTable {
            Layout.fillWidth: true
            visible: sheet.tree.neighbour
            title: qsTr("Its crown, looking up")
            columns: 2
            model: sheet.tree.seen
            onTapped: row => sheet.tree.chooseSeen(row)
        }
        ChipTable {
            Layout.fillWidth: true
            visible: sheet.tree.neighbour
            title: qsTr("On these sides of the crop tree")
            model: sheet.tree.sides
            onTapped: row => sheet.tree.toggleSide(row)
        }
        ChipTable {
            Layout.fillWidth: true
            visible: sheet.tree.known === ""
            title: qsTr("Crown class")
            columns: 2
            model: sheet.tree.crown
            onTapped: row => sheet.tree.chooseCrown(row)
        }
        ChipTable {
            Layout.fillWidth: true
            visible: sheet.tree.known === ""
            title: qsTr("What is seen on it")
            columns: 2
            model: sheet.tree.conditions
            onTapped: row => sheet.tree.toggleCondition(row)
        }
    }
    Words {
        Layout.fillWidth: true
        visible: text !== ""
        text: sheet.tree.missing
        color: Theme.soft
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredHeight: Theme.touch
        text: qsTr("Save")
        main: true
        large: true
        enabled: sheet.tree.missing === ""
        onClicked: sheet.tree.save()
    }

    SpeciesSheet {
        id: species

        viewModel: sheet.tree.search
        onChosen: row => sheet.tree.chooseSpecies(row)
    }
    KeypadSheet {
        id: keypad

        title: qsTr("Diameter (DBH)")
        enterText: qsTr("Take it over")
        reading: sheet.tree.readDigits(keypad.digits)
        onEntered: digits => {
            sheet.tree.enterDigits(digits);
            keypad.close();
        }
    }
}
