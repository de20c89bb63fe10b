pragma ComponentBehavior: Bound

import QtQuick
import Oaklight

// Chips to tap on and off, under the headings of their groups.
Column {
    id: grid

    required property ChipListModel chips

    signal tapped(int row)

    spacing: Theme.pad

    Repeater {
        model: grid.chips

        Column {
            id: entry

            required property int index
            required property string label
            required property string help
            required property string group
            required property bool on
            required property bool first

            width: grid.width
            spacing: Theme.pad

            Words {
                visible: entry.first
                text: entry.group
                font.bold: true
            }
            TapButton {
                width: entry.width
                text: entry.label
                subtext: entry.help
                help: entry.help
                iconName: entry.on ? "tick" : "empty"
                checkable: true
                checked: entry.on
                onToggled: grid.tapped(entry.index)
            }
        }
    }
}
