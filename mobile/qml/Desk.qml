import QtQuick
import QtQuick.Layouts
import Oaklight

// One open tract: the pages' names, what stands above every page, and the page itself.
Item {
    id: desk

    required property AppModel app
    required property Workspace workspace

    // Every page has these two properties, and nothing else comes from outside.
    function showPage() {
        page.setSource(desk.app.pageSource, {
            app: desk.app,
            workspace: desk.workspace
        });
    }

    Component.onCompleted: showPage()

    Connections {
        target: desk.app

        function onPageChanged() {
            desk.showPage();
        }
    }

    RowLayout {
        anchors.fill: parent
        spacing: 0
        layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

        PageRail {
            Layout.fillHeight: true
            visible: Theme.wide
            app: desk.app
        }

        ColumnLayout {
            spacing: 0

            DeskBar {
                Layout.fillWidth: true
                app: desk.app
                desk: desk.workspace.desk
                onPagesAsked: pages.open()
            }

            ProblemBar {
                Layout.fillWidth: true
                desk: desk.workspace.desk
            }

            Loader {
                id: page

                Layout.fillWidth: true
                Layout.fillHeight: true
            }
        }
    }

    PageSheet {
        id: pages

        app: desk.app
    }
}
