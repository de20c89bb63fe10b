pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// What a plot needs beside the field of cells. `brief` keeps two of them in sight and the rest in a sheet.
GridLayout {
    id: actions

    required property TallyViewModel viewModel
    property bool brief: false
    property bool inSheet: false

    signal keypadAsked
    signal borderAsked
    signal seedlingsAsked
    signal doneAsked
    signal moreAsked

    columns: 3
    columnSpacing: 0
    rowSpacing: 0

    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !actions.inSheet
        text: qsTr("Keypad")
        help: qsTr("Type a measured diameter")
        enabled: actions.viewModel.closed === ""
        onClicked: actions.keypadAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !actions.inSheet
        text: qsTr("Same again")
        help: qsTr("One more tree like the last")
        enabled: actions.viewModel.lastTrees.length > 0 && actions.viewModel.closed === ""
        onClicked: actions.viewModel.again()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: actions.brief
        text: qsTr("More")
        onClicked: actions.moreAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !actions.brief
        text: qsTr("Border tree")
        help: qsTr("Whether a tree near the edge is in or out")
        enabled: actions.viewModel.closed === ""
        onClicked: actions.borderAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !actions.brief
        text: qsTr("Seedlings")
        enabled: actions.viewModel.closed === ""
        onClicked: actions.seedlingsAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !actions.brief
        text: qsTr("Next plot")
        onClicked: actions.doneAsked()
    }
    RainLock {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: !actions.brief
        viewModel: actions.viewModel
    }
}
