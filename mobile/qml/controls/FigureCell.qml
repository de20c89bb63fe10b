import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// One figure, large, with its error; a tap tells how it was found out.
T.AbstractButton {
    id: cell

    required property string name
    required property string value
    required property string unit
    required property string error
    required property string remark
    required property string spoken

    implicitHeight: implicitContentHeight
    leftPadding: Theme.pad
    rightPadding: Theme.pad
    Layout.minimumHeight: Theme.touch
    focusPolicy: Qt.StrongFocus
    Accessible.role: Accessible.Button
    Accessible.name: cell.spoken
    Accessible.description: qsTr("Tells how it was computed and by which source")
    Accessible.onPressAction: cell.clicked()

    contentItem: ColumnLayout {
        spacing: 0

        Words {
            Layout.fillWidth: true
            topPadding: Theme.pad
            text: cell.name
            Accessible.ignored: true
        }
        RowLayout {
            Layout.fillWidth: true
            spacing: Theme.pad

            Words {
                Layout.alignment: Qt.AlignBaseline
                text: cell.value
                font.pixelSize: cell.unit === "" ? Theme.large : Theme.figure
                font.bold: true
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
            Words {
                Layout.fillWidth: true
                Layout.alignment: Qt.AlignBaseline
                text: cell.unit
                wrapMode: Text.NoWrap
                fontSizeMode: Text.HorizontalFit
                minimumPixelSize: Theme.small
                Accessible.ignored: true
            }
        }
        Words {
            Layout.fillWidth: true
            visible: cell.error !== ""
            text: cell.error
            font.bold: true
            Accessible.ignored: true
        }
        Words {
            Layout.fillWidth: true
            visible: cell.remark !== ""
            text: cell.remark
            color: Theme.soft
            font.pixelSize: Theme.small
            Accessible.ignored: true
        }
        Item {
            Layout.fillHeight: true
        }
    }

    background: Rectangle {
        radius: Theme.corner
        color: cell.down ? Theme.rule : Theme.panel
        border.width: cell.visualFocus ? Theme.strong : Theme.line
        border.color: cell.visualFocus ? Theme.ink : Theme.rule
    }
}
