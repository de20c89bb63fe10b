import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// One side of a crown: its name, and what closes it.
T.AbstractButton {
    id: button

    required property string name
    required property string words

    implicitHeight: Theme.touch
    Layout.minimumWidth: Theme.touch
    leftPadding: Theme.pad
    rightPadding: Theme.pad
    focusPolicy: Qt.StrongFocus
    Accessible.role: Accessible.Button
    Accessible.name: qsTr("%1: %2").arg(button.name).arg(button.words)
    Accessible.onPressAction: button.clicked()

    contentItem: ColumnLayout {
        spacing: 0

        Item {
            Layout.fillHeight: true
        }
        Words {
            Layout.fillWidth: true
            text: button.name
            font.bold: true
            wrapMode: Text.NoWrap
        }
        Words {
            Layout.fillWidth: true
            text: button.words
            font.pixelSize: Theme.small
            maximumLineCount: 3
            elide: Text.ElideRight
        }
        Item {
            Layout.fillHeight: true
        }
    }

    background: Rectangle {
        radius: Theme.corner
        color: button.down ? Theme.rule : Theme.panel
        border.width: button.visualFocus ? Theme.strong : Theme.line
        border.color: button.visualFocus ? Theme.ink : Theme.rule
    }
}
