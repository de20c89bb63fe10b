import QtQuick
import QtQuick.Layouts
import Oaklight

// Shown when not even the demo tract could be opened.
Item {
    id: page

    required property AppModel app

    ColumnLayout {
        anchors.centerIn: parent
        width: Theme.sheetWidth
        spacing: Theme.gap

        Words {
            Layout.fillWidth: true
            text: qsTr("No tract is open")
            font.pixelSize: Theme.large
            font.bold: true
        }
        Words {
            Layout.fillWidth: true
            text: page.app.problem
        }
        TapButton {
            text: qsTr("Open the demo tract")
            main: true
            onClicked: page.app.openDemo()
        }
    }
}
