import QtQuick
import QtQuick.Layouts
import Oaklight

// Pages as they will be printed, cautions first.
ColumnLayout {
    id: pages

    required property PagesViewModel source
    property alias above: top.data

    function turn(by: int) {
        pages.source.turn(by);
        scroll.contentY = paper.y;  // below the choices, where they stand above it
        scroll.returnToBounds();
    }

    spacing: Theme.pad

    Flickable {
        id: scroll

        Layout.fillWidth: true
        Layout.fillHeight: true
        contentHeight: column.implicitHeight
        clip: true
        boundsBehavior: Flickable.StopAtBounds

        ColumnLayout {
            id: column

            width: scroll.width
            spacing: Theme.gap

            ColumnLayout {
                id: top

                Layout.fillWidth: true
                visible: !Theme.wide
            }
            Rectangle {
                id: paper

                Layout.fillWidth: true
                visible: pages.source.pages > 0
                implicitHeight: sheet.implicitHeight
                color: "transparent"
                border.width: Theme.line
                border.color: Theme.rule

                PageItem {
                    id: sheet

                    width: parent.width
                    height: implicitHeight
                    theme: Theme
                    paper: pages.source.paper
                    picture: pages.source.picture
                    Accessible.role: Accessible.Graphic
                    Accessible.name: words
                }
            }
        }
    }
    Words {
        Layout.fillWidth: true
        visible: pages.source.pages > 0
        text: sheet.words
        font.bold: true
        horizontalAlignment: Text.AlignHCenter
    }
    RowLayout {
        Layout.fillWidth: true
        visible: pages.source.pages > 0
        spacing: Theme.gap

        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Page before")
            enabled: pages.source.page > 0
            onClicked: pages.turn(-1)
        }
        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Next page")
            enabled: pages.source.hasNext
            onClicked: pages.turn(1)
        }
    }
}
