import QtQuick
import QtQuick.Layouts
import Oaklight

// What a plot needs beside the field of cells.
GridLayout {
    id: actions

    required property TallyViewModel viewModel

    signal keypadAsked
    signal borderAsked
    signal seedlingsAsked
    signal doneAsked

    columnSpacing: Theme.pad
    rowSpacing: Theme.pad

    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        text: qsTr("Keypad")
        help: qsTr("Type a measured diameter")
        enabled: actions.viewModel.closed === ""
        onClicked: actions.keypadAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        text: qsTr("Same again")
        help: qsTr("One more tree like the last")
        enabled: actions.viewModel.lastTrees.length > 0
        onClicked: actions.viewModel.again()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        text: qsTr("Border tree")
        help: qsTr("Whether a tree near the edge is in or out")
        enabled: actions.viewModel.closed === ""
        onClicked: actions.borderAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        text: qsTr("Seedlings")
        enabled: actions.viewModel.closed === ""
        onClicked: actions.seedlingsAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        text: qsTr("Plot is done")
        onClicked: actions.doneAsked()
    }
    RainLock {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        viewModel: actions.viewModel
    }
}
