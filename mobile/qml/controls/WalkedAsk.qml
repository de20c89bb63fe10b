import QtQuick
import QtQuick.Layouts
import Oaklight

// Why no tree can be put on a list yet, and the way to mend it.
ColumnLayout {
    id: ask

    signal asked

    spacing: Theme.pad

    Words {
        Layout.fillWidth: true
        text: qsTr("Nobody said how much ground the marking walk covered. Without it no tree can be put on a cutting list: each is to look at again.")
        font.bold: true
        Accessible.role: Accessible.AlertMessage
        Accessible.name: text
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Say how much was walked")
        main: true
        onClicked: ask.asked()
    }
}
