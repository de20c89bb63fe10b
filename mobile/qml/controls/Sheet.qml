import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// A sheet of paper laid over the page. It closes by its own button, by the back key, or by a tap beside it.
T.Popup {
    id: sheet

    property string title: ""
    // What is read at arm's length while something is typed, and a note to it.
    property string headline: ""
    property string subline: ""
    // Used while standing at a tree: its button is for gloves.
    property bool atTree: false
    // Its keys need the whole of a phone.
    property bool whole: false
    default property alias body: body.data

    parent: T.Overlay.overlay
    anchors.centerIn: T.Overlay.overlay
    width: Theme.sheetWidth
    height: sheet.whole && Theme.phone ? Theme.windowHeight : Theme.sheetHeight
    modal: true
    focus: true
    padding: !Theme.phone ? Theme.gap : sheet.whole ? Theme.seam : Theme.pad
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
        spacing: sheet.whole && Theme.phone ? Theme.seam : Theme.pad

        RowLayout {
            Layout.fillWidth: true
            Layout.fillHeight: false
            spacing: Theme.pad

            ColumnLayout {
                Layout.fillWidth: true
                Layout.fillHeight: false
                Layout.leftMargin: sheet.whole ? Theme.pad : 0
                spacing: 0

                Words {
                    Layout.fillWidth: true
                    visible: sheet.headline === "" || !sheet.whole || !Theme.phone
                    text: sheet.title
                    font.pixelSize: Theme.large
                    font.bold: true
                    fontSizeMode: Text.HorizontalFit
                    minimumPixelSize: Theme.body
                    elide: Text.ElideRight
                    wrapMode: Text.NoWrap
                    Accessible.role: Accessible.Heading
                    Accessible.name: text
                }
                Words {
                    Layout.fillWidth: true
                    visible: text !== ""
                    text: sheet.headline
                    font.pixelSize: sheet.whole && Theme.phone ? Theme.large : Theme.figure
                    font.bold: true
                    fontSizeMode: sheet.whole && Theme.phone ? Text.FixedSize : Text.HorizontalFit
                    minimumPixelSize: Theme.body
                    wrapMode: sheet.whole && Theme.phone ? Text.WordWrap : Text.NoWrap
                    Accessible.role: Accessible.AlertMessage
                    Accessible.name: text
                }
                Words {
                    Layout.fillWidth: true
                    visible: text !== ""
                    text: sheet.subline
                    color: Theme.soft
                    font.pixelSize: Theme.small
                    maximumLineCount: sheet.whole && Theme.phone ? 1 : 2
                    elide: Text.ElideRight
                    Accessible.role: Accessible.StaticText
                    Accessible.name: text
                }
            }
            TapButton {
                Layout.alignment: Qt.AlignTop
                text: qsTr("Close")
                small: !sheet.atTree
                onClicked: sheet.close()
            }
        }
        ColumnLayout {
            id: body

            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: sheet.whole && Theme.phone ? Theme.seam : Theme.pad
        }
    }
}
