import QtQuick
import Oaklight

// One tree after the cut.
FigureRow {
    id: stump

    required property int index
    required property string tag
    required property string tree
    required property string shape
    required property string finding
    required property string detail
    readonly property TapList list: ListView.view as TapList

    width: stump.list ? stump.list.width : 0
    lead: stump.tag
    title: stump.tree
    iconName: stump.shape
    subtitle: qsTr("%1; %2").arg(stump.finding).arg(stump.detail)
    onClicked: stump.list.rowTapped(stump.index)
}
