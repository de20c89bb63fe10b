pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// A stand: added, or changed and given plots.
Sheet {
    id: sheet

    required property TractViewModel viewModel
    required property bool metric
    // Row of the stand; -1 for a new one.
    property int row: -1
    property int goal: 0
    readonly property list<string> counts: ["5", "10", "15", "20"]

    function add() {
        sheet.row = -1;
        sheet.fill("", "", "", 0);
    }

    function change(row: int) {
        const stands = sheet.viewModel.stands;
        sheet.row = row;
        sheet.fill(stands.nameAt(row), stands.areaAt(row), stands.walkedAt(row), stands.goalAt(row));
    }

    function fill(name: string, area: string, walked: string, goal: int) {
        nameLine.take(name);
        areaLine.take(area);
        walkedLine.take(walked);
        plots.take("10");
        sheet.goal = goal;
        sheet.viewModel.dismissProblem();
        sheet.open();
    }

    function save() {
        if (sheet.row < 0) {
            sheet.viewModel.addStand(nameLine.typed, areaLine.typed, sheet.goal);
        } else {
            sheet.viewModel.changeStand(sheet.row, nameLine.typed, areaLine.typed, walkedLine.typed, sheet.goal);
        }
    }

    title: sheet.row < 0 ? qsTr("New stand") : nameLine.typed

    Connections {
        target: sheet.viewModel

        function onSaved() {
            sheet.close();
        }
    }

    ProblemWords {
        Layout.fillWidth: true
        problem: sheet.viewModel.problem
    }
    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true

        LabelledLine {
            id: nameLine

            Layout.fillWidth: true
            label: qsTr("Name of the stand")
        }
        LabelledLine {
            id: areaLine

            Layout.fillWidth: true
            label: sheet.metric ? qsTr("Area, hectares") : qsTr("Area, acres")
            inputMethodHints: Qt.ImhFormattedNumbersOnly
        }
        LabelledLine {
            id: walkedLine

            Layout.fillWidth: true
            visible: sheet.row >= 0
            label: sheet.metric ? qsTr("Ground that the marking walk covered, hectares") : qsTr("Ground that the marking walk covered, acres")
            help: qsTr("Without it no tree of this stand is put on a cutting list")
            inputMethodHints: Qt.ImhFormattedNumbersOnly
        }
        Choices {
            Layout.fillWidth: true
            label: qsTr("What the owner wants")
            columns: 2
            options: sheet.viewModel.goals
            chosen: sheet.goal
            onPicked: row => sheet.goal = row
        }
        TapButton {
            Layout.fillWidth: true
            text: qsTr("Save stand")
            main: true
            large: true
            onClicked: sheet.save()
        }
        LabelledLine {
            id: plots

            Layout.fillWidth: true
            Layout.topMargin: Theme.gap
            visible: sheet.row >= 0
            label: qsTr("Plots to add")
            help: sheet.viewModel.designText === "" ? qsTr("Choose the design of the cruise first") : sheet.viewModel.designText
            inputMethodHints: Qt.ImhDigitsOnly
        }
        Choices {
            Layout.fillWidth: true
            visible: sheet.row >= 0
            label: ""
            columns: 4
            options: sheet.counts
            onPicked: row => plots.take(sheet.counts[row])
        }
        TapButton {
            Layout.fillWidth: true
            visible: sheet.row >= 0
            text: qsTr("Add plots")
            enabled: sheet.viewModel.designText !== ""
            onClicked: sheet.viewModel.addPlots(sheet.row, plots.typed)
        }
    }
}
