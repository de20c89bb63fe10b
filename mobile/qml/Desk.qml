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

    // Made anew for each arrangement of the window: Qt 6.4 leaves a row as it was when a tablet is
    // turned and something in it begins to show.
    readonly property int arrangement: Theme.phone ? 0 : Theme.wide ? 1 : 2

    function showBar() {
        bar.setSource("controls/DeskBar.qml", {
            app: desk.app,
            desk: desk.workspace.desk,
            pages: pages
        });
    }

    onArrangementChanged: showBar()
    Component.onCompleted: {
        showBar();
        showPage();
    }

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

            Loader {
                id: bar

                Layout.fillWidth: true
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
