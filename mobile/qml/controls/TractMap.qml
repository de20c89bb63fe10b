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

    TapHandler {
        gesturePolicy: TapHandler.ReleaseWithinBounds
        onTapped: point => map.viewModel.tap(map.inDrawing(point.position), map.lengthInDrawing(Theme.slip), map.inDrawing(Qt.point(map.width, map.height)))
    }
}
