import QtQuick
import QtQuick.Layouts
import Oaklight

// One open tract: the pages' names, what stands above every page, and the page itself.
Item {
    id: desk

    required property AppModel app
    required property Workspace workspace

    LayoutMirroring.enabled: Theme.leftHand
    LayoutMirroring.childrenInherit: false

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
                id: loader

                Layout.fillWidth: true
                Layout.fillHeight: true
                sourceComponent: [tractPage, walkPage, tallyPage, standPage, lightPage, marksPage, setupPage][desk.app.page]
            }
        }
    }

    PageSheet {
        id: pages

        app: desk.app
    }

    Component {
        id: tractPage

        TractPage {
            app: desk.app
        }
    }
    Component {
        id: walkPage

        Item {}
    }
    Component {
        id: tallyPage

        TallyPage {
            workspace: desk.workspace
        }
    }
    Component {
        id: standPage

        Item {}
    }
    Component {
        id: lightPage

        Item {}
    }
    Component {
        id: marksPage

        Item {}
    }
    Component {
        id: setupPage

        SetupPage {
            settings: desk.app.settings
        }
    }
}
