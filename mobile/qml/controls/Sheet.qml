import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// A sheet of paper laid over the page. It closes by its own button, by the back key, or by a tap beside it.
T.Popup {
    id: sheet

    property string title: ""
    default property alias body: body.data

    parent: T.Overlay.overlay
    anchors.centerIn: T.Overlay.overlay
    width: Theme.sheetWidth
    height: Theme.sheetHeight
    modal: true
    focus: true
    padding: Theme.phone ? Theme.pad : Theme.gap
    closePolicy: T.Popup.CloseOnEscape | T.Popup.CloseOnPressOutside

    background: Rectangle {
        color: Theme.ground
        border.width: Theme.strong
        border.color: Theme.ink
        radius: Theme.corner
    }

    T.Overlay.modal: Rectangle {
        color: Theme.shade
    }

    contentData: ColumnLayout {
        anchors.fill: parent
        spacing: Theme.pad

        RowLayout {
            Layout.fillWidth: true
            spacing: Theme.pad

            Words {
                Layout.fillWidth: true
                text: sheet.title
                font.pixelSize: Theme.large
                font.bold: true
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
                Accessible.role: Accessible.Heading
                Accessible.name: text
            }
            TapButton {
                text: qsTr("Close")
                small: true
                onClicked: sheet.close()
            }
        }
        ColumnLayout {
            id: body

            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Theme.pad
        }
    }
}
