pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// The crown from above with its four sides to touch, as a person stands at the stem and looks up.
GridLayout {
    id: crown

    required property CardViewModel card
    required property bool metric
    readonly property list<string> names: [qsTr("North"), qsTr("East"), qsTr("South"), qsTr("West")]
    // Where each side goes: around the picture, or in two rows below it where that is too narrow.
    readonly property list<int> rows: Theme.phone ? [1, 1, 2, 2] : [0, 1, 2, 1]
    readonly property list<int> places: Theme.phone ? [0, 1, 0, 1] : [0, 2, 0, 0]

    signal sideTapped(int side)

    columns: Theme.phone ? 2 : 3
    columnSpacing: Theme.pad
    rowSpacing: Theme.pad

    PictureItem {
        Layout.row: Theme.phone ? 0 : 1
        Layout.column: Theme.phone ? 0 : 1
        Layout.columnSpan: Theme.phone ? 2 : 1
        Layout.fillWidth: true
        Layout.fillHeight: true
        theme: Theme
        picture: crown.card.picture
        metric: crown.metric
        Accessible.role: Accessible.Graphic
        Accessible.name: words
    }
    Repeater {
        model: crown.names

        SideButton {
            id: side

            required property int index
            required property string modelData
            readonly property bool across: !Theme.phone && (side.index === 0 || side.index === 2)

            Layout.row: crown.rows[side.index]
            Layout.column: crown.places[side.index]
            Layout.columnSpan: side.across ? 3 : 1
            Layout.fillWidth: Theme.phone || side.across
            Layout.fillHeight: !Theme.phone && !side.across
            Layout.preferredWidth: side.across || Theme.phone ? 1 : Theme.touch
            name: side.modelData
            words: crown.card.sides[side.index]
            onClicked: crown.sideTapped(side.index)
        }
    }
}
