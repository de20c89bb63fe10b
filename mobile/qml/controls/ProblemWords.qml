import QtQuick
import Oaklight

// Why something was refused, and how to mend it; not there when nothing was.
Rectangle {
    id: box

    property string problem: ""

    visible: box.problem !== ""
    implicitHeight: words.implicitHeight
    color: Theme.warn
    radius: Theme.corner

    Words {
        id: words

        width: box.width
        padding: Theme.pad
        text: box.problem
        color: Theme.onWarn
        Accessible.role: Accessible.AlertMessage
        Accessible.name: text
    }
}
