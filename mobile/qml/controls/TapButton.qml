import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// A control that a gloved finger presses. `large` for undo, save and next; `small` at the table.
// It belongs in a layout, which holds its least width.
T.AbstractButton {
    id: button

    property bool main: false
    property bool large: false
    property bool small: false
    property string help: ""
    property string iconName: ""
    // Only its icon is drawn; the text is spoken.
    readonly property bool bare: button.display === T.AbstractButton.IconOnly
    readonly property bool lit: button.main || button.checked

    implicitWidth: implicitContentWidth
    implicitHeight: button.small ? Theme.touchSmall : Theme.touch
    Layout.minimumWidth: button.large ? Theme.touchLarge : button.small ? Theme.touchSmall : Theme.touch
    focusPolicy: Qt.StrongFocus
    opacity: button.enabled ? 1 : 0.4
    Accessible.role: Accessible.Button
    Accessible.name: button.text
    Accessible.description: button.help
    Accessible.checkable: button.checkable
    Accessible.checked: button.checked
    Accessible.onPressAction: button.clicked()

    contentItem: RowLayout {
        spacing: Theme.pad

        Icon {
            Layout.leftMargin: Theme.pad
            Layout.fillWidth: button.bare
            Layout.rightMargin: button.bare ? Theme.pad : 0
            visible: button.iconName !== ""
            name: button.iconName
            ink: button.lit ? Theme.onLeaf : Theme.ink
            fillMode: Image.PreserveAspectFit
        }

        Words {
            Layout.fillWidth: true
            Layout.fillHeight: true
            visible: !button.bare
            leftPadding: button.iconName === "" ? Theme.pad : 0
            rightPadding: Theme.pad
            text: button.text
            color: button.lit ? Theme.onLeaf : Theme.ink
            font.bold: button.lit
            horizontalAlignment: button.iconName === "" ? Text.AlignHCenter : Text.AlignLeft
            verticalAlignment: Text.AlignVCenter
            elide: Text.ElideRight
            maximumLineCount: 2
        }
    }

    background: Rectangle {
        radius: Theme.corner
        color: button.lit ? Theme.leaf : button.down ? Theme.rule : Theme.panel
        border.width: button.visualFocus ? Theme.strong : Theme.line
        border.color: button.visualFocus ? Theme.ink : Theme.rule
    }
}
