import QtQuick
import Oaklight

// One crop tree card of the list.
FigureRow {
    id: card

    required property int index
    required property string tag
    required property string tree
    required property string before
    required property string after
    required property string sides
    readonly property TapList list: ListView.view as TapList

    width: card.list ? card.list.width : 0
    lead: card.tag
    title: card.tree
    figure: card.before !== "" ? qsTr("%1 \u2192 %2").arg(card.before).arg(card.after) : ""
    subtitle: card.sides
    onClicked: card.list.rowTapped(card.index)
}
