pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// After the cut: the walk with the list, one tap a tree.
Item {
    id: page

    required property AppModel app
    required property Workspace workspace
    readonly property StumpsViewModel viewModel: page.workspace.marks.stumps
    property bool reporting: false

    Component.onCompleted: page.viewModel.setShown(true)
    Component.onDestruction: {
        page.workspace.marks.stumpReport.setOpen(false);
        page.viewModel.setShown(false);
    }
    onReportingChanged: page.workspace.marks.stumpReport.setOpen(page.reporting)

    RowLayout {
        anchors.fill: parent
        anchors.leftMargin: Theme.edge
        anchors.rightMargin: Theme.edge
        anchors.topMargin: Theme.pad
        visible: !page.reporting
        spacing: Theme.gap
        layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

        ColumnLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Theme.pad

            ScrollColumn {
                Layout.fillWidth: true
                Layout.fillHeight: true
                spacing: Theme.pad

                StumpWarning {
                    Layout.fillWidth: true
                    lines: page.viewModel.before
                }
                Words {
                    Layout.fillWidth: true
                    visible: page.viewModel.problem !== ""
                    text: page.viewModel.problem
                }
                StumpInHand {
                    Layout.fillWidth: true
                    visible: page.viewModel.problem === ""
                    viewModel: page.viewModel
                }
                StumpMore {
                    Layout.fillWidth: true
                    viewModel: page.viewModel
                    onListAsked: list.open()
                    onLooseAsked: loose.open()
                    onReportAsked: page.reporting = true
                }
            }
            StumpTag {
                Layout.fillWidth: true
                visible: page.viewModel.problem === "" && page.viewModel.tag !== ""
                viewModel: page.viewModel
            }
            StumpActs {
                Layout.fillWidth: true
                Layout.bottomMargin: Theme.edge
                viewModel: page.viewModel
            }
        }
        StumpList {
            Layout.preferredWidth: Theme.columnWidth
            Layout.maximumWidth: Theme.columnWidth
            Layout.fillHeight: true
            Layout.bottomMargin: Theme.edge
            visible: Theme.wide
            viewModel: page.viewModel
        }
    }

    StumpReport {
        anchors.fill: parent
        anchors.leftMargin: Theme.edge
        anchors.rightMargin: Theme.edge
        anchors.topMargin: Theme.pad
        visible: page.reporting
        source: page.workspace.marks.stumpReport
        onBackAsked: page.reporting = false
    }

    Sheet {
        id: list

        title: qsTr("Trees after the cut")

        StumpList {
            Layout.fillWidth: true
            Layout.fillHeight: true
            viewModel: page.viewModel
            onChosen: list.close()
        }
    }
    KeypadSheet {
        id: loose

        title: qsTr("Stump without a tag")
        reading: page.viewModel.loosePreview(loose.digits)
        note: qsTr("Diameter over the bark")
        onEntered: digits => {
            page.viewModel.noteLoose(digits);
            loose.close();
        }
    }
}
