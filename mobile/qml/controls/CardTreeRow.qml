import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// One tree of a card with its verdict: shape and word, why, and what would change it.
T.AbstractButton {
    id: row

    required property string title
    required property string standing
    required property string shape
    required property string verdict
    required property string origin
    required property string reason
    required property string rules
    required property string change
    required property bool byHand

    leftPadding: Theme.gap
    rightPadding: Theme.gap
    implicitHeight: row.implicitContentHeight
    focusPolicy: Qt.StrongFocus
    Accessible.role: Accessible.Button
    Accessible.name: qsTr("%1, %2. %3, %4. %5").arg(row.title).arg(row.standing).arg(row.verdict).arg(row.origin).arg(row.reason)
    Accessible.description: qsTr("Opens what can be decided for this tree")
    Accessible.onPressAction: row.clicked()

    contentItem: ColumnLayout {
        spacing: 0

        RowLayout {
            Layout.fillWidth: true
            Layout.topMargin: Theme.pad
            spacing: Theme.pad

            Icon {
                name: row.shape
            }
            Words {
                Layout.fillWidth: true
                text: row.verdict
                font.pixelSize: Theme.large
                font.bold: true
            }
        }
        Words {
            Layout.fillWidth: true
            text: row.title
            font.bold: true
        }
        Words {
            Layout.fillWidth: true
            Layout.bottomMargin: Theme.pad
            text: qsTr("%1; %2").arg(row.standing).arg(row.origin)
            font.bold: row.byHand
            color: Theme.soft
        }
        Words {
            Layout.fillWidth: true
            text: row.reason
        }
        Words {
            Layout.fillWidth: true
            visible: row.change !== ""
            text: row.change
            color: Theme.soft
        }
        Words {
            Layout.fillWidth: true
            visible: row.rules !== ""
            text: row.rules
            color: Theme.soft
            font.pixelSize: Theme.small
        }
        Item {
            Layout.preferredHeight: Theme.line
        }
    }

    background: Rectangle {
        radius: Theme.corner
        color: row.down ? Theme.rule : Theme.panel
        border.width: row.visualFocus ? Theme.strong : Theme.line
        border.color: row.visualFocus ? Theme.ink : Theme.rule
    }
}
