pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// What is left to do in the tract, and what it is made of. Where there is no room beside it, the map is in the middle.
ScrollColumn {
    id: overview

    required property TractViewModel viewModel
    required property JoinViewModel join
    required property TurnsViewModel turns
    required property bool metric
    readonly property list<string> steps: [qsTr("Name the tract"), qsTr("Add a stand"), qsTr("Choose the design"), qsTr("Add plots"), qsTr("Walk to the next plot"), qsTr("Say how much was walked"), qsTr("Go on with the light"), qsTr("To the marks")]

    signal stepAsked
    signal filesAsked
    signal joinAsked
    signal factsAsked
    signal designAsked
    signal standAdded
    signal layoutAsked
    signal turnsAsked
    signal outlinesAsked
    signal standAsked(int row)

    FigureBlock {
        Layout.fillWidth: true
        visible: overview.viewModel.figure !== ""
        figure: overview.viewModel.figure
        caption: qsTr("plots visited")
    }
    TapButton {
        Layout.fillWidth: true
        text: overview.steps[overview.viewModel.step]
        main: true
        large: true
        onClicked: overview.stepAsked()
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Tract files: new, open, copy")
        spoken: qsTr("Tract files")
        onClicked: overview.filesAsked()
    }
    TapButton {
        Layout.fillWidth: true
        visible: overview.join.open > 0
        text: overview.join.openWords
        help: qsTr("What several tablets changed")
        onClicked: overview.joinAsked()
    }
    Words {
        Layout.fillWidth: true
        text: overview.viewModel.todo
    }
    TractMap {
        Layout.fillWidth: true
        Layout.preferredHeight: Theme.mapHeight
        visible: !Theme.wide
        viewModel: overview.viewModel
        metric: overview.metric
    }
    Words {
        Layout.fillWidth: true
        visible: stands.count > 0
        text: qsTr("Stands")
        font.bold: true
        Accessible.role: Accessible.Heading
        Accessible.name: text
    }
    ColumnLayout {
        Layout.fillWidth: true
        spacing: 0

        Repeater {
            id: stands

            model: overview.viewModel.stands

            ListRow {
                required property int index
                required property string name
                required property string facts

                Layout.fillWidth: true
                text: name
                detail: facts
                onClicked: overview.standAsked(index)
            }
        }
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Add a stand")
        iconName: "plus"
        onClicked: overview.standAdded()
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Outlines of stands")
        help: qsTr("Out of a file of GeoJSON, KML or GPX")
        onClicked: overview.outlinesAsked()
    }
    Words {
        Layout.fillWidth: true
        visible: overview.viewModel.designText !== ""
        text: qsTr("Cruise: %1").arg(overview.viewModel.designText)
        color: Theme.soft
    }
    TapButton {
        Layout.fillWidth: true
        visible: overview.viewModel.designText === ""
        text: qsTr("Design of the cruise")
        onClicked: overview.designAsked()
    }
    TapButton {
        Layout.fillWidth: true
        visible: overview.viewModel.designText !== ""
        text: qsTr("Lay out plots")
        help: qsTr("How many, and where each lies")
        onClicked: overview.layoutAsked()
    }
    TapButton {
        Layout.fillWidth: true
        visible: overview.turns.left
        text: overview.turns.now
        help: qsTr("Which of the points still to do are measured, and which only counted")
        onClicked: overview.turnsAsked()
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("About this tract")
        help: qsTr("Its name, and how an ambulance finds it")
        onClicked: overview.factsAsked()
    }
}
