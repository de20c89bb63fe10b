pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// One marked tree: what may hurt somebody first, then what is decided and why.
Sheet {
    id: sheet

    required property MarkedTreeViewModel tree

    title: sheet.tree.title

    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true

        Repeater {
            model: sheet.tree.cautions

            Rectangle {
                id: caution

                required property string modelData

                Layout.fillWidth: true
                implicitHeight: line.implicitHeight
                color: Theme.warn

                RowLayout {
                    id: line

                    anchors.fill: parent
                    anchors.leftMargin: Theme.pad
                    anchors.rightMargin: Theme.pad
                    spacing: Theme.pad

                    Icon {
                        name: "caution"
                        ink: Theme.onWarn
                    }
                    Words {
                        Layout.fillWidth: true
                        Layout.topMargin: Theme.pad
                        Layout.bottomMargin: Theme.pad
                        text: caution.modelData
                        color: Theme.onWarn
                        font.bold: true
                        Accessible.role: Accessible.AlertMessage
                        Accessible.name: text
                    }
                }
            }
        }
        Words {
            Layout.fillWidth: true
            text: sheet.tree.beside
        }
        RowLayout {
            Layout.fillWidth: true
            Layout.topMargin: Theme.gap
            spacing: Theme.pad

            Icon {
                name: sheet.tree.icon
            }
            Words {
                Layout.fillWidth: true
                text: sheet.tree.verdict
                font.pixelSize: Theme.large
                font.bold: true
            }
        }
        Words {
            Layout.fillWidth: true
            text: sheet.tree.reason
        }
        Repeater {
            model: sheet.tree.facts

            Words {
                required property string modelData

                Layout.fillWidth: true
                text: modelData
            }
        }
        Words {
            Layout.fillWidth: true
            visible: text !== ""
            text: sheet.tree.rules
            color: Theme.soft
            font.pixelSize: Theme.small
        }
    }
}
