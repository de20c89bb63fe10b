import QtQuick
import Oaklight

// A bearing as an arrow, north up.
Item {
    id: compass

    required property real azimuth
    required property string spoken

    Accessible.role: Accessible.Graphic
    Accessible.name: compass.spoken

    Icon {
        anchors.fill: parent
        name: "compass"
        side: compass.width
        ink: Theme.soft
        fillMode: Image.PreserveAspectFit
    }
    Icon {
        anchors.fill: parent
        name: "bearing"
        side: compass.width
        ink: Theme.ink
        rotation: compass.azimuth
        fillMode: Image.PreserveAspectFit
        antialiasing: true
        smooth: true
    }
}
