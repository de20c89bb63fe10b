pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// What a plot needs beside the field of cells. `brief` keeps two of them in sight and the rest in a sheet.
GridLayout {
    id: actions

    required property TallyViewModel viewModel
    required property PointViewModel point
    property bool brief: false
    property bool inSheet: false
    // Whether each species asks for its diameter by keypad.
    property bool typed: false
    // While one finger is down elsewhere, or here, another makes no tree.
    property bool fingerOnField: false
    readonly property alias fingerHere: again.pressed
    readonly property bool usable: actions.viewModel.closed === "" && !actions.viewModel.locked

    signal keypadAsked
    signal borderAsked
    signal seedlingsAsked
    signal doneAsked
    signal moreAsked
    signal pointAsked

    columns: 3
    columnSpacing: 0
    rowSpacing: 0

    TapButton {
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.preferredWidth: 1
        // Nothing of a size is asked at a count point.
        visible: !actions.inSheet && !actions.point.counting
        text: actions.viewModel.beyond === "" ? qsTr("Keypad") : qsTr("Keypad: %1").arg(actions.viewModel.beyond)
        spoken: qsTr("Keypad")
        help: qsTr("Type a measured diameter, or one that has no cell")
        lines: 3
        checked: actions.typed
        enabled: actions.usable
        onClicked: actions.keypadAsked()
    }
    TapButton {
        id: again

        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.preferredWidth: 1
        visible: !actions.inSheet
        text: qsTr("Same again")
        help: qsTr("One more tree like the last")
        enabled: actions.usable && actions.viewModel.lastTrees.length > 0
        onClicked: {
            if (!actions.fingerOnField)
                actions.viewModel.again();
        }
    }
    TapButton {
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.preferredWidth: 1
        visible: actions.brief
        text: qsTr("More")
        onClicked: actions.moreAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.preferredWidth: 1
        visible: !actions.brief
        text: qsTr("Border tree")
        help: qsTr("Whether a tree near the edge is in or out")
        enabled: actions.viewModel.closed === ""
        onClicked: actions.borderAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.preferredWidth: 1
        visible: !actions.brief && !actions.point.counting
        text: qsTr("Seedlings")
        enabled: actions.viewModel.closed === ""
        onClicked: actions.seedlingsAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.preferredWidth: 1
        visible: actions.inSheet
        text: qsTr("Count or measure")
        help: qsTr("Whether trees at this point are counted or measured")
        enabled: actions.point.may
        onClicked: actions.pointAsked()
    }
    TapButton {
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.preferredWidth: 1
        visible: !actions.brief
        text: qsTr("Next plot")
        tall: true
        onClicked: actions.doneAsked()
    }
    RainLock {
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.preferredWidth: 1
        visible: !actions.brief
        viewModel: actions.viewModel
    }
}
