pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Who is handed the packet, on which paper, and what is in it.
ColumnLayout {
    id: choices

    required property PacketViewModel packet
    required property int unwalked

    signal walkedAsked

    spacing: Theme.gap

    WalkedAsk {
        Layout.fillWidth: true
        visible: choices.unwalked >= 0
        onAsked: choices.walkedAsked()
    }
    GridLayout {
        Layout.fillWidth: true
        columns: Theme.wide || Theme.phone ? 1 : 2
        columnSpacing: Theme.pad
        rowSpacing: Theme.pad

        Repeater {
            model: choices.packet.readers

            TapButton {
                required property int index
                required property string modelData

                Layout.fillWidth: true
                Layout.preferredWidth: 1
                text: modelData
                checked: choices.packet.reader === index
                onClicked: choices.packet.reader = index
            }
        }
    }
    PaperChoice {
        Layout.fillWidth: true
        source: choices.packet
    }
    Words {
        Layout.fillWidth: true
        visible: text !== ""
        text: choices.packet.problem
        font.bold: true
        Accessible.role: Accessible.AlertMessage
        Accessible.name: text
    }
    TapButton {
        Layout.fillWidth: true
        visible: choices.packet.canDecide
        text: qsTr("Decide all stands")
        main: true
        onClicked: choices.packet.decideAll()
    }
    SourceSentence {
        Layout.fillWidth: true
        visible: text !== ""
        text: choices.packet.summary
        keys: ["tree_list", "board_feet", "cords", "local_volume"]
    }
}
