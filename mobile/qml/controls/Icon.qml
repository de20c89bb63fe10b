import QtQuick
import Oaklight

// One of our icons, in the colour of what stands around it.
Image {
    id: image

    required property string name
    property color ink: Theme.ink
    property real side: Theme.large

    width: side
    height: side
    sourceSize.width: side
    sourceSize.height: side
    source: Theme.icon(image.name, image.ink)
    Accessible.ignored: true
}
