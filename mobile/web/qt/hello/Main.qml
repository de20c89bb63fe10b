import QtQuick
import QtQuick.Controls.Basic
import QtQuick.Layouts
import QtQuick.Shapes

Window {
    id: page

    property int taps: 0

    visible: true
    width: 400
    height: 300
    color: "white"

    ColumnLayout {
        anchors.centerIn: parent
        spacing: 20

        Text {
            objectName: "words"
            Layout.alignment: Qt.AlignHCenter
            font.pixelSize: 32
            text: page.taps === 0 ? "Not tapped" : "Tapped " + page.taps
            onTextChanged: console.log("hello: " + text)
        }

        Button {
            Layout.alignment: Qt.AlignHCenter
            Layout.preferredWidth: 220
            Layout.preferredHeight: 64
            text: "Tap"
            onClicked: page.taps += 1
        }
    }

    Shape {
        width: 60
        height: 60

        ShapePath {
            strokeColor: "black"
            fillColor: "green"
            startX: 30
            startY: 8

            PathLine {
                x: 52
                y: 52
            }
            PathLine {
                x: 8
                y: 52
            }
            PathLine {
                x: 30
                y: 8
            }
        }
    }

    Component.onCompleted: console.log("hello: shown")
}
