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
    // As high as `large` is wide, where the width is shared.
    property bool tall: false
    property string help: ""
    property string subtext: ""
    property string spoken: button.text
    property real letters: Theme.body
    property int lines: 2
    property string iconName: ""
    // Only its icon is drawn; the text is spoken.
    readonly property bool bare: button.display === T.AbstractButton.IconOnly
    readonly property bool lit: button.main || button.checked

    implicitWidth: implicitContentWidth
    implicitHeight: button.small ? Theme.touchSmall : button.tall ? Theme.touchLarge : Theme.touch
    Layout.minimumWidth: button.large ? Theme.touchLarge : button.small ? Theme.touchSmall : Theme.touch
    focusPolicy: Qt.StrongFocus
    opacity: button.enabled ? 1 : 0.4
    Accessible.role: Accessible.Button
    Accessible.name: button.spoken
    Accessible.description: button.help
    Accessible.checkable: button.checkable
    Accessible.checked: button.checked
    Accessible.onPressAction: button.clicked()

    contentItem: RowLayout {
        spacing: Theme.pad

        Icon {
            Layout.leftMargin: Theme.pad
            Layout.alignment: Qt.AlignVCenter
            Layout.fillWidth: button.bare
            Layout.rightMargin: button.bare ? Theme.pad : 0
            visible: button.iconName !== ""
            name: button.iconName
            ink: button.lit ? Theme.onLeaf : Theme.ink
            fillMode: Image.PreserveAspectFit
        }

        ColumnLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            visible: !button.bare
            spacing: 0

            Words {
                Layout.fillWidth: true
                Layout.fillHeight: button.subtext === ""
                leftPadding: button.iconName === "" ? Theme.pad : 0
                rightPadding: Theme.pad
                text: button.text
                color: button.lit ? Theme.onLeaf : Theme.ink
                font.bold: button.lit
                font.pixelSize: button.letters
                horizontalAlignment: button.iconName === "" && button.subtext === "" ? Text.AlignHCenter : Text.AlignLeft
                verticalAlignment: Text.AlignVCenter
                wrapMode: Text.WordWrap
                fontSizeMode: button.subtext === "" ? Text.Fit : Text.FixedSize
                minimumPixelSize: Theme.small
                elide: Text.ElideRight
                maximumLineCount: button.lines
            }
            Words {
                Layout.fillWidth: true
                visible: button.subtext !== ""
                leftPadding: button.iconName === "" ? Theme.pad : 0
                rightPadding: Theme.pad
                text: button.subtext
                color: button.lit ? Theme.onLeaf : Theme.soft
                font.pixelSize: Theme.small
                wrapMode: Text.NoWrap
                elide: Text.ElideRight
            }
        }
    }

    background: Rectangle {
        radius: Theme.corner
        color: button.lit ? Theme.leaf : button.down ? Theme.rule : Theme.panel
        border.width: button.visualFocus ? Theme.strong : Theme.line
        border.color: button.visualFocus ? Theme.ink : Theme.rule
    }
}
