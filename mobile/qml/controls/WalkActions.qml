import QtQuick
import QtQuick.Layouts
import Oaklight

// What can be said of the plot one walks to, beside that it is started.
ColumnLayout {
    id: actions

    required property WalkViewModel viewModel
    property bool listShown: false

    signal skipAsked
    signal listAsked
    signal centreAsked
    signal pointAsked

    spacing: Theme.pad

    GridLayout {
        Layout.fillWidth: true
        columns: Theme.phone ? 2 : actions.listShown ? 3 : 4
        columnSpacing: Theme.pad
        rowSpacing: Theme.pad

        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Empty plot")
            help: qsTr("Visited, no tree to tally: it counts as zero")
            enabled: (actions.viewModel.may & WalkViewModel.Empty) !== 0
            onClicked: actions.viewModel.callEmpty()
        }
        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Skip")
            help: qsTr("Not visited, for a reason: not in the sample")
            enabled: (actions.viewModel.may & WalkViewModel.Skip) !== 0
            onClicked: actions.skipAsked()
        }
        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Plan again")
            help: qsTr("Not visited after all")
            enabled: (actions.viewModel.may & WalkViewModel.Again) !== 0
            onClicked: actions.viewModel.planAgain()
        }
        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: actions.viewModel.route.planned ? qsTr("Next of the walk") : qsTr("Nearest to do")
            help: qsTr("Goes to the next plot that is still to do")
            onClicked: actions.viewModel.chooseNext()
        }
        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Plot centre")
            help: qsTr("The mean of many fixes at the plot's centre")
            enabled: (actions.viewModel.may & WalkViewModel.Centre) !== 0
            onClicked: actions.centreAsked()
        }
        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Count or measure")
            help: qsTr("Whether trees at this point are counted or measured")
            enabled: actions.viewModel.point.may
            onClicked: actions.pointAsked()
        }
        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            visible: !actions.listShown
            text: qsTr("All plots")
            help: actions.viewModel.progress
            onClicked: actions.listAsked()
        }
    }
}
