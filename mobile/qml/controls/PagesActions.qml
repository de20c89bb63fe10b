import QtQuick
import QtQuick.Layouts
import Oaklight

// Back to the list, or the files onto the disk; where they are is told beside what wrote them.
ColumnLayout {
    id: actions

    required property PagesViewModel source
    required property string text
    property string help: ""

    signal backAsked
    signal makeAsked

    spacing: Theme.gap

    Words {
        Layout.fillWidth: true
        visible: text !== ""
        text: actions.source.notice
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
            text: actions.text
            help: actions.help
            main: true
            large: true
            enabled: actions.source.pages > 0
            onClicked: actions.makeAsked()
        }
    }
}
