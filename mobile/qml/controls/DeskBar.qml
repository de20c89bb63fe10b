import QtQuick
import QtQuick.Layouts
import Oaklight

// Above every page: where one is, whose tract it is, undo and redo.
Rectangle {
    id: bar

    required property AppModel app
    required property DeskViewModel desk

    signal pagesAsked

    implicitHeight: row.implicitHeight
    color: Theme.panel

    RowLayout {
        id: row

        anchors.fill: parent
        anchors.leftMargin: Theme.edge
        anchors.rightMargin: Theme.edge
        spacing: Theme.pad
        layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

        TapButton {
            visible: !Theme.wide
            text: bar.app.pageNames[bar.app.page]
            iconName: "pages"
            help: qsTr("Shows the names of all pages")
            onClicked: bar.pagesAsked()
        }
        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            Words {
                Layout.fillWidth: true
                text: bar.desk.title
                font.bold: true
                wrapMode: Text.NoWrap
                elide: Text.ElideRight
            }
            Words {
                Layout.fillWidth: true
                visible: bar.desk.demo || bar.desk.readOnly
                text: bar.desk.demo ? qsTr("DEMO: invented trees") : qsTr("For looking only")
                font.pixelSize: Theme.small
                wrapMode: Text.NoWrap
                elide: Text.ElideRight
            }
        }
        TapButton {
            text: qsTr("Undo")
            large: true
            iconName: "undo"
            help: bar.desk.undoLabel
            display: Theme.phone ? TapButton.IconOnly : TapButton.TextBesideIcon
            enabled: bar.desk.undoLabel !== ""
            onClicked: bar.desk.undo()
        }
        TapButton {
            text: qsTr("Redo")
            iconName: "redo"
            help: bar.desk.redoLabel
            display: TapButton.IconOnly
            enabled: bar.desk.redoLabel !== ""
            onClicked: bar.desk.redo()
        }
    }

    Rectangle {
        anchors.bottom: parent.bottom
        width: parent.width
        height: Theme.line
        color: Theme.rule
    }
}
