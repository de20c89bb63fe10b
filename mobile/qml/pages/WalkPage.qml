pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Where the next plot is, and what to do on arrival.
Item {
    id: page

    required property AppModel app
    required property Workspace workspace
    readonly property WalkViewModel viewModel: page.workspace.walk

    Component.onCompleted: page.viewModel.show(true)
    Component.onDestruction: page.viewModel.show(false)

    Connections {
        target: page.viewModel

        function onReached() {
            page.app.page = AppModel.Tally;
        }
    }

    RowLayout {
        anchors.fill: parent
        spacing: Theme.gap
        layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

        ColumnLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Theme.pad

            ScrollColumn {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.margins: Theme.edge
                spacing: Theme.pad

                RowLayout {
                    Layout.fillWidth: true
                    visible: page.viewModel.name !== ""
                    spacing: Theme.pad

                    Icon {
                        name: page.viewModel.mark
                        side: Theme.figure
                    }
                    Words {
                        Layout.fillWidth: true
                        text: page.viewModel.name
                        font.pixelSize: Theme.large
                        font.bold: true
                        Accessible.role: Accessible.Heading
                        Accessible.name: text
                    }
                    Words {
                        text: page.viewModel.status
                        font.pixelSize: Theme.large
                        wrapMode: Text.NoWrap
                    }
                }
                Words {
                    Layout.fillWidth: true
                    visible: text !== ""
                    text: page.viewModel.point.kind
                    font.pixelSize: Theme.large
                    Accessible.role: Accessible.StaticText
                    Accessible.name: text
                }
                // Only a poor one is a warning.
                Words {
                    Layout.fillWidth: true
                    visible: page.viewModel.way.fix !== "" && !page.viewModel.way.poor
                    text: page.viewModel.way.fix
                    color: Theme.soft
                }
                ProblemWords {
                    Layout.fillWidth: true
                    problem: page.viewModel.way.poor ? page.viewModel.way.fix : ""
                }
                Way {
                    Layout.fillWidth: true
                    visible: page.viewModel.way.known
                    viewModel: page.viewModel.way
                }
                Words {
                    Layout.fillWidth: true
                    text: page.viewModel.note
                    font.pixelSize: page.viewModel.name === "" ? Theme.large : Theme.body
                    font.bold: page.viewModel.name === ""
                }
                Words {
                    Layout.fillWidth: true
                    visible: page.viewModel.way.problem !== ""
                    text: page.viewModel.way.problem
                    color: Theme.soft
                    font.pixelSize: Theme.small
                }
                Words {
                    Layout.fillWidth: true
                    visible: page.viewModel.way.known
                    text: page.viewModel.way.compass
                    color: Theme.soft
                    font.pixelSize: Theme.small
                }
                // A hand's width of screen has no room for them at the foot.
                WalkActions {
                    Layout.fillWidth: true
                    Layout.topMargin: Theme.apart
                    visible: Theme.phone
                    viewModel: page.viewModel
                    onSkipAsked: skip.open()
                    onListAsked: list.open()
                    onCentreAsked: centre.open()
                    onPointAsked: point.open()
                }
                // Whether plots are still needed is asked here, after the buttons.
                StandNow {
                    Layout.fillWidth: true
                    viewModel: page.workspace.standNow
                }
            }
            TapButton {
                Layout.fillWidth: true
                Layout.leftMargin: Theme.edge
                Layout.rightMargin: Theme.edge
                Layout.bottomMargin: Theme.pad
                text: qsTr("Start plot")
                help: page.viewModel.name
                main: true
                large: true
                enabled: (page.viewModel.may & WalkViewModel.Go) !== 0
                onClicked: page.viewModel.start()
            }
            WalkActions {
                Layout.fillWidth: true
                Layout.leftMargin: Theme.edge
                Layout.rightMargin: Theme.edge
                Layout.bottomMargin: Theme.edge
                visible: !Theme.phone
                viewModel: page.viewModel
                listShown: Theme.wide
                onSkipAsked: skip.open()
                onListAsked: list.open()
                onCentreAsked: centre.open()
                onPointAsked: point.open()
            }
        }

        ColumnLayout {
            Layout.preferredWidth: Theme.columnWidth
            Layout.maximumWidth: Theme.columnWidth
            Layout.fillHeight: true
            Layout.topMargin: Theme.pad
            Layout.leftMargin: Theme.leftHand ? Theme.edge : 0
            Layout.rightMargin: Theme.leftHand ? 0 : Theme.edge
            visible: Theme.wide
            spacing: Theme.pad

            Words {
                Layout.fillWidth: true
                text: qsTr("All plots: %1").arg(page.viewModel.progress)
                font.bold: true
            }
            TapButton {
                Layout.fillWidth: true
                text: qsTr("Plan the walk")
                help: qsTr("The shortest way by all plots to do")
                onClicked: route.open()
            }
            PlotList {
                Layout.fillWidth: true
                Layout.fillHeight: true
                viewModel: page.viewModel
            }
        }
    }

    SkipSheet {
        id: skip

        viewModel: page.viewModel
    }
    CentreSheet {
        id: centre

        plot: page.viewModel.name
        viewModel: page.viewModel.centre
    }
    PointSheet {
        id: point

        point: page.viewModel.point
    }
    RouteSheet {
        id: route

        viewModel: page.viewModel.route
    }
    Sheet {
        id: list

        title: qsTr("All plots")

        Words {
            Layout.fillWidth: true
            text: page.viewModel.progress
        }
        TapButton {
            Layout.fillWidth: true
            text: qsTr("Plan the walk")
            help: qsTr("The shortest way by all plots to do")
            onClicked: {
                list.close();
                route.open();
            }
        }
        PlotList {
            Layout.fillWidth: true
            Layout.fillHeight: true
            viewModel: page.viewModel
            onPicked: list.close()
        }
    }
}
