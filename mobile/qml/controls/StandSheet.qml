pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// A stand: added or changed.
Sheet {
    id: sheet

    required property TractViewModel viewModel
    required property bool metric
    // Row of the stand; -1 for a new one.
    property int row: -1
    property int goal: 0
    // Opened from another page, only the stand itself is told.
    property bool plotsToo: true

    signal plotsAsked(int row)
    signal outlineAsked(string name)

    function add() {
        sheet.row = -1;
        sheet.fill("", "", "", 0);
    }

    function change(row: int) {
        const stands = sheet.viewModel.stands;
        sheet.row = row;
        sheet.fill(stands.nameAt(row), stands.areaAt(row), stands.walkedAt(row), stands.goalAt(row));
    }

    // The same, for how much of it was walked.
    function askWalked(row: int) {
        sheet.change(row);
        walkedLine.focusLine();
    }

    function fill(name: string, area: string, walked: string, goal: int) {
        nameLine.take(name);
        areaLine.take(area);
        walkedLine.take(walked);
        all.toTop();
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
        id: all

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
            label: sheet.metric ? qsTr("Walked for marking, ha") : qsTr("Walked for marking, acres")
            help: qsTr("Without it no tree of this stand is put on a cutting list")
            inputMethodHints: Qt.ImhFormattedNumbersOnly
        }
        Choices {
            Layout.fillWidth: true
            label: qsTr("What the owner wants")
            columns: Theme.phone ? 1 : 2
            options: sheet.viewModel.goals
            chosen: sheet.goal
            onPicked: row => sheet.goal = row
        }
        TapButton {
            Layout.fillWidth: true
            visible: sheet.row >= 0 && sheet.plotsToo
            text: qsTr("Add plots")
            onClicked: {
                sheet.close();
                sheet.plotsAsked(sheet.row);
            }
        }
        TapButton {
            Layout.fillWidth: true
            visible: sheet.row >= 0
            text: qsTr("Outline on the map")
            onClicked: {
                sheet.close();
                sheet.outlineAsked(sheet.viewModel.stands.nameAt(sheet.row));
            }
        }
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Save stand")
        main: true
        large: true
        onClicked: sheet.save()
    }
}
