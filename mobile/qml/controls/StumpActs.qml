import QtQuick
import QtQuick.Layouts
import Oaklight

// What was found of the tree in hand, one tap each; only what can be said of it can be pressed.
GridLayout {
    id: acts

    required property StumpsViewModel viewModel

    signal listAsked
    signal looseAsked

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
        iconName: "plot_planned"
        onClicked: acts.viewModel.note(StumpsViewModel.Standing)
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !acts.viewModel.leaving
        enabled: acts.viewModel.may & StumpsViewModel.Hung
        text: qsTr("Hung up")
        iconName: "caution"
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
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        text: acts.viewModel.leaving ? qsTr("Back to the list") : qsTr("Trees to be left")
        help: qsTr("A tree that was to be left, and was cut or hurt")
        onClicked: acts.viewModel.showLeaving(!acts.viewModel.leaving)
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        enabled: acts.viewModel.may & StumpsViewModel.Loose
        text: qsTr("Stump without a tag")
        onClicked: acts.looseAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !Theme.wide
        text: qsTr("Choose a tree")
        onClicked: acts.listAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !acts.viewModel.leaving
        text: qsTr("Next tree")
        help: qsTr("The nearest one that nobody looked at")
        onClicked: acts.viewModel.next()
    }
}
