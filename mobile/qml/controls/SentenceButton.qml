import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// A sentence that opens more: as high as its words need, never cut.
T.AbstractButton {
    id: button

    property string help: ""
    property string iconName: ""

    implicitHeight: implicitContentHeight
    Layout.minimumHeight: Theme.touch
    focusPolicy: Qt.StrongFocus
    Accessible.role: Accessible.Button
    Accessible.name: button.text
    Accessible.description: button.help
    Accessible.onPressAction: button.clicked()

    contentItem: RowLayout {
        spacing: Theme.gap

        Icon {
            Layout.leftMargin: Theme.pad
            visible: button.iconName !== ""
            name: button.iconName
        }
        Words {
            Layout.fillWidth: true
            padding: Theme.pad
            text: button.text
            Accessible.ignored: true
        }
    }

    background: Rectangle {
        radius: Theme.corner
        color: button.down ? Theme.rule : Theme.panel
        border.width: button.visualFocus ? Theme.strong : Theme.line
        border.color: button.visualFocus ? Theme.ink : Theme.rule
    }
}
