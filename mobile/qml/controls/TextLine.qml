import QtQuick
import QtQuick.Templates as T
import Oaklight

// One line of text to type.
T.TextField {
    id: line

    implicitHeight: Theme.touchSmall
    leftPadding: Theme.pad
    rightPadding: Theme.pad
    color: Theme.ink
    placeholderTextColor: Theme.soft
    selectionColor: Theme.leaf
    selectedTextColor: Theme.onLeaf
    font.pixelSize: Theme.body
    verticalAlignment: TextInput.AlignVCenter

    Words {
        anchors.fill: parent
        anchors.leftMargin: Theme.pad
        visible: line.text === "" && line.preeditText === ""
        text: line.placeholderText
        color: Theme.soft
        verticalAlignment: Text.AlignVCenter
        wrapMode: Text.NoWrap
        elide: Text.ElideRight
        Accessible.ignored: true
    }

    background: Rectangle {
        radius: Theme.corner
        color: Theme.ground
        border.width: line.activeFocus ? Theme.strong : Theme.line
        border.color: line.activeFocus ? Theme.ink : Theme.rule
    }
}
