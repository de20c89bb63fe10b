import QtQuick
import Oaklight

// One cell of a tally field. Cells meet, so that no touch falls between them; only what is drawn keeps a seam.
Item {
    id: cell

    property string text: ""
    property string spoken: text
    property bool chosen: false
    property bool pointed: false
    property bool mark: false
    property real letters: Theme.body

    signal tapped

    activeFocusOnTab: true
    Accessible.role: Accessible.Button
    Accessible.name: cell.spoken
    Accessible.focusable: true
    Accessible.checked: cell.chosen
    Accessible.onPressAction: cell.tapped()
    Keys.onReturnPressed: cell.tapped()
    Keys.onEnterPressed: cell.tapped()
    Keys.onSpacePressed: cell.tapped()

    Rectangle {
        anchors.fill: parent
        anchors.margins: Theme.seam
        radius: Theme.corner
        color: cell.chosen || cell.pointed ? Theme.leaf : Theme.panel
        border.width: cell.activeFocus || cell.pointed ? Theme.strong : Theme.line
        border.color: cell.activeFocus || cell.pointed ? Theme.ink : Theme.rule

        Words {
            anchors.fill: parent
            anchors.margins: Theme.seam
            text: cell.text
            color: cell.chosen || cell.pointed ? Theme.onLeaf : Theme.ink
            font.pixelSize: cell.letters
            font.bold: true
            horizontalAlignment: Text.AlignHCenter
            verticalAlignment: Text.AlignVCenter
            wrapMode: Text.WordWrap
            elide: Text.ElideRight
            fontSizeMode: Text.Fit
            minimumPixelSize: Theme.small
            Accessible.ignored: true
        }
    }
}
