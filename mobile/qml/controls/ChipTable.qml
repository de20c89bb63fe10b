pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Chips under a heading, as many beside one another as fit.
ColumnLayout {
    id: chips

    required property ChipListModel model
    property string title: ""
    property int columns: Theme.phone ? 2 : 4
    property bool small: false

    signal tapped(int row)

    spacing: Theme.pad

    Words {
        Layout.fillWidth: true
        visible: chips.title !== ""
        text: chips.title
        color: Theme.soft
    }
    GridLayout {
        Layout.fillWidth: true
        columns: chips.columns
        columnSpacing: Theme.pad
        rowSpacing: Theme.pad

        Repeater {
            model: chips.model

            TapButton {
                required property int index
                required property string label
                required property bool on

                Layout.fillWidth: true
                Layout.preferredWidth: 1
                small: chips.small
                text: label
                checked: on
                onClicked: chips.tapped(index)
            }
        }
    }
}
