import QtQuick
import QtQuick.Layouts
import Oaklight

// The light of one crown, now and after, large.
RowLayout {
    id: figures

    required property CardViewModel card

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
