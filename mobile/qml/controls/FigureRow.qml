import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// One row of a long list: what it is, what is known of it, and its figure. Each is as high as the
// next, so that a hundred thousand of them scroll.
T.AbstractButton {
    id: row

    property string lead: ""
    property string title: ""
    property string subtitle: ""
    property string figure: ""
    property string iconName: ""
    property real letters: Theme.large

    height: Theme.touch
    focusPolicy: Qt.StrongFocus
    leftPadding: Theme.pad
    rightPadding: Theme.pad
    Accessible.role: Accessible.Button
    Accessible.name: qsTr("%1 %2. %3. %4").arg(row.lead).arg(row.title).arg(row.figure).arg(row.subtitle)
    Accessible.onPressAction: row.clicked()

    contentItem: RowLayout {
        spacing: Theme.gap

        Words {
            Layout.minimumWidth: Theme.touchSmall
            text: row.lead
            font.pixelSize: Theme.large
            font.bold: true
            wrapMode: Text.NoWrap
        }
        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            Words {
                Layout.fillWidth: true
                text: row.title
                font.bold: true
                fontSizeMode: Text.HorizontalFit
                minimumPixelSize: Theme.small
                wrapMode: Text.NoWrap
                elide: Text.ElideRight
            }
            RowLayout {
                Layout.fillWidth: true
                visible: Theme.phone && row.figure !== ""
                spacing: Theme.pad

                Icon {
                    visible: row.iconName !== ""
                    name: row.iconName
                    side: Theme.body
                }
                Words {
                    Layout.fillWidth: true
                    text: row.figure
                    font.bold: true
                    wrapMode: Text.NoWrap
                    elide: Text.ElideRight
                }
            }
            Words {
                Layout.fillWidth: true
                visible: row.subtitle !== ""
                text: row.subtitle
                color: Theme.soft
                font.pixelSize: Theme.small
                wrapMode: Theme.phone ? Text.NoWrap : Text.WordWrap
                maximumLineCount: Theme.phone ? 1 : 2
                elide: Text.ElideRight
            }
        }
        Icon {
            visible: !Theme.phone && row.iconName !== ""
            name: row.iconName
        }
        Words {
            visible: !Theme.phone
            text: row.figure
            font.pixelSize: row.letters
            font.bold: true
            wrapMode: Text.NoWrap
        }
    }

    background: Rectangle {
        color: row.down ? Theme.rule : Theme.ground

        Rectangle {
            anchors.bottom: parent.bottom
            width: parent.width
            height: Theme.line
            color: Theme.rule
        }
        Rectangle {
            anchors.fill: parent
            visible: row.visualFocus
            color: "transparent"
            border.width: Theme.strong
            border.color: Theme.ink
        }
    }
}
