import QtQuick
import QtQuick.Layouts
import Oaklight

Rectangle {
    id: intro

    required property Settings settings

    color: Theme.ground

    ColumnLayout {
        anchors.centerIn: parent
        width: Theme.sheetWidth
        spacing: Theme.gap

        Words {
            Layout.fillWidth: true
            text: qsTr("Look up first. No app sees a hanging limb.")
            font.pixelSize: Theme.large
        }
        TapButton {
            text: qsTr("Begin")
            main: true
            large: true
            onClicked: intro.settings.introSeen = true
        }
    }
}
