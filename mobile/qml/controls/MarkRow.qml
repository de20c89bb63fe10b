import QtQuick
import Oaklight

// One mark of the list.
FigureRow {
    id: mark

    required property int index
    required property string tag
    required property string tree
    required property string shape
    required property string verdict
    required property string work
    required property string placed
    readonly property TapList list: ListView.view as TapList

    width: mark.list ? mark.list.width : 0
    lead: mark.tag
    title: mark.tree
    iconName: mark.shape
    figure: mark.verdict
    letters: Theme.body
    subtitle: mark.work !== "" ? qsTr("%1; %2").arg(mark.work).arg(mark.placed) : mark.placed
    onClicked: mark.list.rowTapped(mark.index)
}
