import QtQuick
import Oaklight

// A bearing as an arrow on a dial that shows where north is.
Item {
    id: compass

    required property real arrow
    required property real north
    required property string spoken

    Accessible.role: Accessible.Graphic
    Accessible.name: compass.spoken

    Icon {
        anchors.fill: parent
        name: "compass"
        side: compass.width
        ink: Theme.soft
        rotation: compass.north
        fillMode: Image.PreserveAspectFit
        antialiasing: true
        smooth: true
    }
    Icon {
        anchors.fill: parent
        name: "bearing"
        side: compass.width
        ink: Theme.ink
        rotation: compass.arrow
        fillMode: Image.PreserveAspectFit
        antialiasing: true
        smooth: true
    }
}
