import QtQuick
import Oaklight

// Every tree of the walk with its mark. Where there is no room beside it, the filters stand above.
TapList {
    id: list

    delegate: MarkRow {}
    header: MarkFilterHeader {}
}
