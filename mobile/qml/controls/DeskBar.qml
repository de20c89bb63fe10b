import QtQuick
import QtQuick.Layouts
import Oaklight

// Above every page: where one is, whose tract it is, undo and redo.
Rectangle {
    id: bar

    required property AppModel app
    required property DeskViewModel desk
    required property PageSheet pages
    readonly property string mode: bar.desk.demo ? qsTr("DEMO: invented trees") : bar.desk.readOnly ? qsTr("For looking only") : ""

    implicitHeight: column.implicitHeight
    color: Theme.panel

    ColumnLayout {
        id: column

        anchors.fill: parent
        spacing: 0

        RowLayout {
            Layout.fillWidth: true
            Layout.leftMargin: Theme.phone ? 0 : Theme.edge
            Layout.rightMargin: Theme.phone ? 0 : Theme.edge
            spacing: Theme.phone ? 0 : Theme.seam
            layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

            TapButton {
                Layout.fillWidth: Theme.phone
                visible: !Theme.wide
                text: bar.app.pageNames[bar.app.page]
                iconName: Theme.phone ? "" : "pages"
                help: qsTr("Shows the names of all pages")
                onClicked: bar.pages.open()
            }
            ColumnLayout {
                Layout.fillWidth: true
                Layout.leftMargin: Theme.pad
                Layout.rightMargin: Theme.pad
                visible: !Theme.phone
                spacing: 0

                Words {
                    Layout.fillWidth: true
                    text: bar.desk.title
                    font.bold: true
                    wrapMode: Text.NoWrap
                    fontSizeMode: Text.HorizontalFit
                    minimumPixelSize: Theme.small
                    elide: Text.ElideRight
                }
                Words {
                    Layout.fillWidth: true
                    visible: bar.mode !== ""
                    text: bar.mode
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
        Words {
            Layout.fillWidth: true
            Layout.leftMargin: Theme.edge
            Layout.rightMargin: Theme.edge
            visible: Theme.phone
            text: bar.mode === "" ? bar.desk.title : bar.desk.demo ? qsTr("DEMO. %1").arg(bar.desk.title) : qsTr("%1. %2").arg(bar.mode).arg(bar.desk.title)
            font.pixelSize: Theme.small
            wrapMode: Text.NoWrap
            elide: Text.ElideRight
        }
        Rectangle {
            Layout.fillWidth: true
            implicitHeight: Theme.line
            color: Theme.rule
        }
    }
}
