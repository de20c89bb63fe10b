import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// The light of one crown, now and after, large; a tap tells how it is told.
T.AbstractButton {
    id: figures

    required property CardViewModel card

    implicitHeight: implicitContentHeight
    leftPadding: Theme.pad
    rightPadding: Theme.pad
    Layout.minimumHeight: Theme.touch
    focusPolicy: Qt.StrongFocus
    Accessible.role: Accessible.Button
    Accessible.name: qsTr("Light: %1, %2").arg(figures.card.light[0]).arg(figures.card.light[1])
    Accessible.description: qsTr("Tells how it was computed and by which source")
    Accessible.onPressAction: figures.clicked()
    onClicked: sheet.open()

    SourceSheet {
        id: sheet

        keys: ["light", "crown_width", "local_curve"]
    }

    contentItem: RowLayout {
        spacing: Theme.gap

        ColumnLayout {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            spacing: 0

            Words {
                text: figures.card.light[0]
                Layout.fillWidth: true
                font.pixelSize: Theme.figure
                fontSizeMode: Text.HorizontalFit
                minimumPixelSize: Theme.body
                font.bold: true
                wrapMode: Text.NoWrap
            }
            Words {
                Layout.fillWidth: true
                text: figures.card.lightWords[0]
                color: Theme.soft
            }
        }
        Icon {
            visible: !Theme.phone
            name: "arrow"
            rotation: 90
        }
        ColumnLayout {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            spacing: 0

            Words {
                text: figures.card.light[1]
                Layout.fillWidth: true
                font.pixelSize: Theme.figure
                fontSizeMode: Text.HorizontalFit
                minimumPixelSize: Theme.body
                font.bold: true
                wrapMode: Text.NoWrap
            }
            Words {
                Layout.fillWidth: true
                text: figures.card.lightWords[1]
                color: Theme.soft
            }
        }
    }

    background: Rectangle {
        radius: Theme.corner
        color: figures.down ? Theme.rule : Theme.panel
        border.width: figures.visualFocus ? Theme.strong : Theme.line
        border.color: figures.visualFocus ? Theme.ink : Theme.rule
    }
}
