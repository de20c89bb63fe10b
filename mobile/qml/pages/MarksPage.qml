import QtQuick
import QtQuick.Layouts
import Oaklight

// What is marked, what it amounts to, and the packet that is handed over.
Item {
    id: page

    required property AppModel app
    required property Workspace workspace
    readonly property MarksViewModel viewModel: page.workspace.marks
    property bool handingOver: false

    Component.onCompleted: page.viewModel.setShown(true)
    Component.onDestruction: {
        page.viewModel.packet.setOpen(false);
        page.viewModel.setShown(false);
    }
    onHandingOverChanged: page.viewModel.packet.setOpen(page.handingOver)

    RowLayout {
        anchors.fill: parent
        anchors.leftMargin: Theme.edge
        anchors.rightMargin: Theme.edge
        anchors.topMargin: Theme.pad
        visible: !page.handingOver
        spacing: Theme.gap
        layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

        ColumnLayout {
            spacing: Theme.pad

            MarkList {
                Layout.fillWidth: true
                Layout.fillHeight: true
                viewModel: page.viewModel
                model: page.viewModel.marks
                onRowTapped: row => {
                    page.viewModel.openTree(row);
                    tree.open();
                }
            }
            TapButton {
                Layout.fillWidth: true
                Layout.bottomMargin: Theme.edge
                visible: !Theme.wide
                text: qsTr("Packet to hand over")
                main: true
                onClicked: page.handingOver = true
            }
        }
        ColumnLayout {
            Layout.preferredWidth: Theme.columnWidth
            Layout.maximumWidth: Theme.columnWidth
            Layout.fillHeight: true
            visible: Theme.wide
            spacing: Theme.pad

            ScrollColumn {
                Layout.fillWidth: true
                Layout.fillHeight: true

                MarkFilters {
                    Layout.fillWidth: true
                    viewModel: page.viewModel
                }
            }
            TapButton {
                Layout.fillWidth: true
                Layout.bottomMargin: Theme.edge
                text: qsTr("Packet to hand over")
                main: true
                onClicked: page.handingOver = true
            }
        }
    }

    RowLayout {
        anchors.fill: parent
        anchors.leftMargin: Theme.edge
        anchors.rightMargin: Theme.edge
        anchors.topMargin: Theme.pad
        visible: page.handingOver
        spacing: Theme.gap
        layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

        ColumnLayout {
            spacing: Theme.pad

            PrintedPages {
                Layout.fillWidth: true
                Layout.fillHeight: true
                source: page.viewModel.packet
                above: PacketChoices {
                    Layout.fillWidth: true
                    packet: page.viewModel.packet
                    unwalked: page.viewModel.unwalked
                    onWalkedAsked: walked.ask(page.viewModel.unwalked)
                }
            }
            PagesActions {
                Layout.fillWidth: true
                Layout.bottomMargin: Theme.edge
                visible: !Theme.wide
                source: page.viewModel.packet
                text: qsTr("Make the packet")
                help: qsTr("Writes the pages and the list beside the tract file")
                onBackAsked: page.handingOver = false
                onMakeAsked: page.viewModel.packet.make()
            }
        }
        ColumnLayout {
            Layout.preferredWidth: Theme.columnWidth
            Layout.maximumWidth: Theme.columnWidth
            Layout.fillHeight: true
            visible: Theme.wide
            spacing: Theme.pad

            ScrollColumn {
                Layout.fillWidth: true
                Layout.fillHeight: true

                PacketChoices {
                    Layout.fillWidth: true
                    packet: page.viewModel.packet
                    unwalked: page.viewModel.unwalked
                    onWalkedAsked: walked.ask(page.viewModel.unwalked)
                }
            }
            PagesActions {
                Layout.fillWidth: true
                Layout.bottomMargin: Theme.edge
                source: page.viewModel.packet
                text: qsTr("Make the packet")
                help: qsTr("Writes the pages and the list beside the tract file")
                onBackAsked: page.handingOver = false
                onMakeAsked: page.viewModel.packet.make()
            }
        }
    }

    WalkedSheet {
        id: walked

        viewModel: page.workspace.tract
        metric: page.app.settings.metric
    }
    MarkedTreeSheet {
        id: tree

        tree: page.viewModel.tree
    }
}
