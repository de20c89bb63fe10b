pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// The pages by name, always in sight where there is room.
Rectangle {
    id: rail

    required property AppModel app

    implicitWidth: Theme.touchLarge
    color: Theme.panel

    ColumnLayout {
        anchors.fill: parent
        spacing: 0

        Repeater {
            model: rail.app.pageNames

            T.AbstractButton {
                id: entry

                required property int index
                required property string modelData

                Layout.fillWidth: true
                Layout.fillHeight: true
                visible: modelData !== ""
                text: modelData
                checked: rail.app.page === index
                focusPolicy: Qt.StrongFocus
                Accessible.role: Accessible.PageTab
                Accessible.name: text
                Accessible.selected: checked
                Accessible.onPressAction: clicked()
                onClicked: rail.app.page = index

                contentItem: ColumnLayout {
                    spacing: 0

                    Item {
                        Layout.fillHeight: true
                    }
                    Icon {
                        Layout.alignment: Qt.AlignHCenter
                        name: rail.app.pageIcon(entry.index)
                        ink: entry.checked ? Theme.onLeaf : Theme.ink
                    }
                    Words {
                        Layout.alignment: Qt.AlignHCenter
                        text: entry.text
                        color: entry.checked ? Theme.onLeaf : Theme.ink
                        font.bold: entry.checked
                    }
                    Item {
                        Layout.fillHeight: true
                    }
                }
                background: Rectangle {
                    color: entry.checked ? Theme.leaf : entry.down ? Theme.rule : Theme.panel
                    border.width: entry.visualFocus ? Theme.strong : 0
                    border.color: Theme.ink
                }
            }
        }
    }
}
