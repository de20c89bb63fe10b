pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// One tree: what was measured, what was seen, and mending it.
Sheet {
    id: sheet

    required property TreeViewModel viewModel

    signal speciesAsked

    title: sheet.viewModel.title
    atTree: true

    Connections {
        target: sheet.viewModel

        function onRemoved() {
            sheet.close();
        }
    }

    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true
        spacing: Theme.pad

        ChipGrid {
            Layout.fillWidth: true
            chips: sheet.viewModel.chips
            onTapped: row => sheet.viewModel.toggle(row)
        }
        Words {
            text: qsTr("Measured")
            font.bold: true
        }
        GridLayout {
            Layout.fillWidth: true
            columns: Theme.phone ? 1 : 2
            columnSpacing: Theme.pad
            rowSpacing: Theme.pad

            Repeater {
                model: sheet.viewModel.readingNames

                TapButton {
                    required property int index
                    required property string modelData

                    Layout.fillWidth: true
                    Layout.preferredWidth: 1
                    text: sheet.viewModel.readings.length > index ? sheet.viewModel.readings[index] : ""
                    subtext: modelData
                    spoken: qsTr("%1: %2").arg(modelData).arg(text)
                    onClicked: keypad.ask(index, modelData)
                }
            }
        }
        TapButton {
            Layout.fillWidth: true
            text: qsTr("Another species")
            onClicked: sheet.speciesAsked()
        }
        TapButton {
            Layout.fillWidth: true
            Layout.topMargin: Theme.apart
            text: qsTr("Take this tree out")
            help: qsTr("Undo brings it back")
            onClicked: sheet.viewModel.remove()
        }
    }

    KeypadSheet {
        id: keypad

        property int row: 0

        function ask(asked, name) {
            keypad.row = asked;
            keypad.title = name;
            keypad.open();
        }

        reading: sheet.viewModel.read(keypad.row, keypad.digits)
        onEntered: digits => {
            sheet.viewModel.enter(keypad.row, digits);
            keypad.close();
        }
    }
}
