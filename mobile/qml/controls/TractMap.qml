import QtQuick
import Oaklight

// The tract drawn; a tap on a plot chooses it.
PictureItem {
    id: map

    required property TractViewModel viewModel

    theme: Theme
    picture: map.viewModel.map
    Accessible.role: Accessible.Graphic
    Accessible.name: map.words

    // An area and no handler: a handler would be reached through a sheet that lies above it.
    MouseArea {
        anchors.fill: parent
        onClicked: mouse => map.viewModel.tap(map.inDrawing(Qt.point(mouse.x, mouse.y)), map.lengthInDrawing(Theme.slip), map.inDrawing(Qt.point(map.width, map.height)))
    }
}
