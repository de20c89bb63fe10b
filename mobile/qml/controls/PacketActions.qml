import QtQuick
import QtQuick.Layouts
import Oaklight

// Back to the list, or the files onto the disk.
RowLayout {
    id: actions

    required property PacketViewModel packet

    signal backAsked

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
