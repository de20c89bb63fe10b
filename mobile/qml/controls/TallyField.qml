pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// The cells of species and diameters, and the one finger that counts.
Item {
    id: field

    required property TallyViewModel viewModel
    // Where classes open over the species: whether they are open.
    property bool opened: false
    // Whether a species asks for its diameter by keypad.
    property bool typed: false
    // A finger on a button beside the field: until it lifts, no cell makes a tree.
    property bool fingerBeside: false
    readonly property alias fingerHere: touch.down
    readonly property bool classesShown: !cells.over || field.opened || (touch.down && touch.pressedSpecies >= 0)

    signal otherAsked
    signal keypadAsked

    function tapSpecies(row) {
        if (cells.over && field.viewModel.bounced())
            return;
        if (row >= species.lastRow) {
            field.otherAsked();
        } else {
            field.viewModel.pin(row);
            field.askSize();
        }
    }

    // After a species, its size: by the class field, or by keypad.
    function askSize() {
        field.opened = !field.typed;
        if (field.typed)
            field.keypadAsked();
    }

    function tapClass(speciesRow, classRow) {
        if (classRow < field.viewModel.classes.length)
            field.viewModel.tally(speciesRow, classRow);
        // Where they lie over the species: on to the next tree's species.
        field.opened = false;
    }

    TallyLayout {
        id: cells

        width: field.width
        height: field.height
        touch: Theme.touch
        gap: Theme.gap
        mirrored: Theme.leftHand
        onChanged: field.viewModel.setRoom(cells.speciesRoom, cells.classRoom)
    }

    GridLayout {
        id: species

        readonly property int lastRow: names.count

        x: cells.speciesRect.x
        y: cells.speciesRect.y
        width: cells.speciesRect.width
        height: cells.speciesRect.height
        visible: !cells.over || !field.classesShown
        columns: cells.speciesColumns
        columnSpacing: 0
        rowSpacing: 0

        Repeater {
            id: names

            model: field.viewModel.species

            TallyCell {
                required property int index
                required property string name
                required property string cellName

                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 1
                Layout.preferredHeight: 1
                text: cellName
                spoken: name
                chosen: field.viewModel.pinned === index
                pointed: touch.pressedSpecies === index
                onTapped: field.tapSpecies(index)
            }
        }
        TallyCell {
            readonly property int index: species.lastRow

            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.preferredWidth: 1
            Layout.preferredHeight: 1
            text: field.viewModel.pinned < 0 && field.viewModel.pinnedName !== "" ? field.viewModel.pinnedName : qsTr("Other")
            spoken: qsTr("Other species: search all")
            chosen: field.viewModel.pinned < 0 && field.viewModel.pinnedName !== ""
            pointed: touch.pressedSpecies === index
            onTapped: field.otherAsked()
        }
    }

    GridLayout {
        id: classes

        x: cells.classRect.x
        y: cells.classRect.y
        width: cells.classRect.width
        height: cells.classRect.height
        visible: field.classesShown
        columns: cells.classColumns
        columnSpacing: 0
        rowSpacing: 0

        Repeater {
            model: field.viewModel.classes

            TallyCell {
                required property int index
                required property string modelData

                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 1
                Layout.preferredHeight: 1
                text: modelData
                spoken: qsTr("%1, diameter class").arg(modelData)
                letters: Theme.large
                pointed: touch.pointedClass === index
                onTapped: field.tapClass(-1, index)
            }
        }
        TallyCell {
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.preferredWidth: 1
            Layout.preferredHeight: 1
            visible: cells.over
            text: qsTr("Species")
            spoken: qsTr("Back to the species")

            readonly property int index: field.viewModel.classes.length

            onTapped: field.opened = false
        }
    }

    TouchField {
        id: touch

        anchors.fill: parent
        enabled: field.viewModel.closed === "" && !field.viewModel.locked && (touch.down || !field.fingerBeside)
        speciesCells: species
        classCells: classes
        slip: Theme.slip
        onPointedAt: (speciesRow, classRow) => field.viewModel.point(speciesRow, classRow)
        onChosen: (speciesRow, classRow) => field.tapClass(speciesRow, classRow)
        onTappedSpecies: row => field.tapSpecies(row)
        onDropped: field.viewModel.point(-1, -1)
    }

    Rectangle {
        anchors.fill: parent
        visible: field.viewModel.locked
        color: Theme.shade

        Words {
            anchors.centerIn: parent
            text: qsTr("Locked against rain")
            color: Theme.onShade
            font.pixelSize: Theme.large
            font.bold: true
        }
    }
}
