import QtQuick
import QtQuick.Layouts
import Oaklight

// What is asked for less often than what was found.
GridLayout {
    id: more

    required property StumpsViewModel viewModel

    signal listAsked
    signal looseAsked
    signal reportAsked

    columns: 2
    columnSpacing: Theme.gap
    rowSpacing: Theme.gap

    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        text: more.viewModel.leaving ? qsTr("Back to the list") : qsTr("Trees to be left")
        help: qsTr("A tree that was to be left, and was cut or hurt")
        onClicked: more.viewModel.showLeaving(!more.viewModel.leaving)
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        text: qsTr("Report")
        help: qsTr("What was found, damage, what it was worth, audit by sample")
        onClicked: more.reportAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        enabled: more.viewModel.may & StumpsViewModel.Loose
        text: qsTr("Stump without a tag")
        lines: 3
        onClicked: more.looseAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !Theme.wide
        text: qsTr("Choose a tree")
        onClicked: more.listAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !more.viewModel.leaving
        text: qsTr("Next tree")
        help: qsTr("The nearest one that nobody looked at")
        onClicked: more.viewModel.next()
    }
}
