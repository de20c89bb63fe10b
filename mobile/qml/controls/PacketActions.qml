import QtQuick
import QtQuick.Layouts
import Oaklight

// Back to the list, or the files onto the disk; where they are is told beside what wrote them.
ColumnLayout {
    id: actions

    required property PacketViewModel packet

    signal backAsked

    spacing: Theme.gap

    Words {
        Layout.fillWidth: true
        visible: text !== ""
        text: actions.packet.notice
        font.bold: true
        wrapMode: Text.WrapAnywhere
        Accessible.role: Accessible.AlertMessage
        Accessible.name: text
    }
    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.gap

        TapButton {
            text: qsTr("Back")
            onClicked: actions.backAsked()
        }
        TapButton {
            Layout.fillWidth: true
            text: qsTr("Make the packet")
            help: qsTr("Writes the pages and the list beside the tract file")
            main: true
            large: true
            enabled: actions.packet.pages > 0
            onClicked: actions.packet.make()
        }
    }
}
