import QtQuick
import QtQuick.Layouts
import Oaklight

// What was found of the tree in hand, one tap each; only what can be said of it can be pressed.
GridLayout {
    id: acts

    required property StumpsViewModel viewModel

    columns: Theme.phone ? 2 : 3
    columnSpacing: Theme.gap
    rowSpacing: Theme.gap

    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        Layout.columnSpan: Theme.phone ? 2 : 1
        visible: !acts.viewModel.leaving
        enabled: acts.viewModel.may & StumpsViewModel.Found
        text: qsTr("Found as marked")
        iconName: "tick"
        main: true
        onClicked: acts.viewModel.note(StumpsViewModel.Found)
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !acts.viewModel.leaving
        enabled: acts.viewModel.may & StumpsViewModel.Standing
        text: qsTr("Still standing")
        iconName: Theme.phone ? "" : "plot_planned"
        onClicked: acts.viewModel.note(StumpsViewModel.Standing)
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !acts.viewModel.leaving
        enabled: acts.viewModel.may & StumpsViewModel.Hung
        text: qsTr("Hung up")
        iconName: Theme.phone ? "" : "caution"
        onClicked: acts.viewModel.note(StumpsViewModel.Hung)
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: acts.viewModel.leaving
        enabled: acts.viewModel.may & StumpsViewModel.NotMarked
        text: qsTr("Cut, not marked")
        iconName: "cross"
        onClicked: acts.viewModel.note(StumpsViewModel.NotMarked)
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: acts.viewModel.leaving
        enabled: acts.viewModel.may & StumpsViewModel.Hurt
        text: qsTr("Hurt tree")
        iconName: "take"
        onClicked: acts.viewModel.note(StumpsViewModel.Hurt)
    }
}
