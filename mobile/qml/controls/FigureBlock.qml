import QtQuick
import QtQuick.Layouts
import Oaklight

// A figure, large, and what it is.
ColumnLayout {
    id: block

    required property string figure
    required property string caption
    property string spoken: block.caption
    property color ink: Theme.ink

    spacing: 0
    Accessible.role: Accessible.StaticText
    Accessible.name: qsTr("%1: %2").arg(block.spoken).arg(block.figure)

    Words {
        text: block.figure
        color: block.ink
        font.pixelSize: Theme.figure
        font.bold: true
        wrapMode: Text.NoWrap
        Accessible.ignored: true
    }
    Words {
        visible: block.caption !== ""
        text: block.caption
        color: block.ink
        wrapMode: Text.NoWrap
        Accessible.ignored: true
    }
}
