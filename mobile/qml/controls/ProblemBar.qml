import QtQuick
import QtQuick.Layouts
import Oaklight

// What went wrong, in words, until it is mended or put away; damage of the file stays, and stands large.
Rectangle {
    id: bar

    required property DeskViewModel desk
    readonly property bool damaged: bar.desk.damage !== ""
    readonly property bool unsaved: !bar.damaged && bar.desk.notSaved !== ""
    readonly property bool refused: bar.desk.refusal !== ""
    readonly property string message: bar.damaged ? bar.desk.damage : bar.unsaved ? bar.desk.notSaved : bar.refused ? bar.desk.refusal : bar.desk.lowRoom

    visible: message !== ""
    implicitHeight: row.implicitHeight
    color: Theme.warn

    RowLayout {
        id: row

        anchors.fill: parent
        anchors.leftMargin: Theme.edge
        anchors.rightMargin: Theme.edge
        spacing: Theme.pad

        Icon {
            name: "caution"
            ink: Theme.onWarn
        }
        Words {
            Layout.fillWidth: true
            Layout.margins: Theme.pad
            text: bar.damaged ? qsTr("DAMAGED. %1").arg(bar.message) : bar.unsaved ? qsTr("NOT SAVED. %1").arg(bar.message) : bar.message
            color: Theme.onWarn
            font.bold: bar.damaged || bar.unsaved
            font.pixelSize: bar.damaged ? Theme.large : Theme.body
            Accessible.role: Accessible.AlertMessage
            Accessible.name: text
        }
        TapButton {
            visible: bar.damaged
            text: qsTr("Rescue")
            help: qsTr("Copies all that can still be read into a new file and opens it")
            large: true
            onClicked: bar.desk.rescue()
        }
        TapButton {
            visible: !bar.damaged
            text: bar.unsaved ? qsTr("Try again") : qsTr("All right")
            large: true
            onClicked: bar.unsaved ? bar.desk.retry() : bar.refused ? bar.desk.dismissRefusal() : bar.desk.dismissLowRoom()
        }
    }
}
