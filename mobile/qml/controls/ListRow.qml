import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// One row of a list: what it is, large; what more there is to say, below; a shape and a word beside.
T.AbstractButton {
    id: row

    property string detail: ""
    property string mark: ""
    property string status: ""

    implicitHeight: Theme.touch
    focusPolicy: Qt.StrongFocus
    Accessible.role: Accessible.Button
    Accessible.name: row.status === "" ? row.text : qsTr("%1: %2").arg(row.text).arg(row.status)
    Accessible.description: row.detail
    Accessible.checked: row.checked
    Accessible.onPressAction: row.clicked()

    contentItem: RowLayout {
        spacing: Theme.pad

        Icon {
            Layout.leftMargin: Theme.pad
            visible: row.mark !== ""
            name: row.mark
            ink: row.checked ? Theme.onLeaf : Theme.ink
        }
        ColumnLayout {
            Layout.fillWidth: true
            Layout.leftMargin: row.mark === "" ? Theme.pad : 0
            spacing: 0

            Words {
                Layout.fillWidth: true
                text: row.text
                color: row.checked ? Theme.onLeaf : Theme.ink
                font.bold: true
                maximumLineCount: 2
                elide: Text.ElideRight
            }
            Words {
                Layout.fillWidth: true
                visible: row.detail !== ""
                text: row.detail
                color: row.checked ? Theme.onLeaf : Theme.soft
                font.pixelSize: Theme.small
                maximumLineCount: 2
                elide: Text.ElideRight
            }
        }
        Words {
            Layout.rightMargin: Theme.pad
            visible: row.status !== ""
            text: row.status
            color: row.checked ? Theme.onLeaf : Theme.ink
            wrapMode: Text.NoWrap
        }
    }

    background: Rectangle {
        color: row.checked ? Theme.leaf : row.down ? Theme.rule : Theme.ground
        border.width: row.visualFocus ? Theme.strong : 0
        border.color: Theme.ink

        Rectangle {
            anchors.bottom: parent.bottom
            width: parent.width
            height: Theme.line
            color: Theme.rule
        }
    }
}
