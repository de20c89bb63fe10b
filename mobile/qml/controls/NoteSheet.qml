pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// How something was found out, in paragraphs under headings.
Sheet {
    id: sheet

    required property NoteListModel note

    onOpened: list.positionViewAtBeginning()

    ListView {
        id: list

        Layout.fillWidth: true
        Layout.fillHeight: true
        clip: true
        spacing: Theme.pad
        boundsBehavior: Flickable.StopAtBounds
        model: sheet.note

        delegate: ColumnLayout {
            id: paragraph

            required property string heading
            required property string words

            width: ListView.view.width
            spacing: 0

            Words {
                Layout.fillWidth: true
                Layout.topMargin: Theme.pad
                visible: paragraph.heading !== ""
                text: paragraph.heading
                font.bold: true
                Accessible.role: Accessible.Heading
                Accessible.name: text
            }
            Words {
                Layout.fillWidth: true
                text: paragraph.words
                Accessible.role: Accessible.Paragraph
                Accessible.name: text
            }
        }
    }
}
