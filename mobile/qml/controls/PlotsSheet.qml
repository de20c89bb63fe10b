pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Plots for a stand, numbered on from those it has.
Sheet {
    id: sheet

    required property TractViewModel viewModel
    required property TurnsViewModel turns
    property int row: -1
    readonly property list<string> counts: ["5", "10", "15", "20"]

    function add(row: int) {
        sheet.row = row;
        count.take("10");
        sheet.viewModel.dismissProblem();
        sheet.viewModel.beginPlots(row);
        sheet.open();
    }

    title: qsTr("Add plots")

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

        Words {
            Layout.fillWidth: true
            text: sheet.viewModel.designText === "" ? qsTr("Choose the design of the cruise first.") : qsTr("%1: %2").arg(sheet.viewModel.stands.nameAt(sheet.row)).arg(sheet.viewModel.designText)
        }
        Choices {
            Layout.fillWidth: true
            label: qsTr("How many to add")
            columns: Theme.phone ? 2 : 4
            options: sheet.counts
            onPicked: row => count.take(sheet.counts[row])
        }
        LabelledLine {
            id: count

            Layout.fillWidth: true
            label: qsTr("or another number")
            inputMethodHints: Qt.ImhDigitsOnly
        }
        TurnChoices {
            Layout.fillWidth: true
            turns: sheet.turns
        }
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Add plots")
        main: true
        large: true
        enabled: sheet.viewModel.designText !== ""
        onClicked: sheet.viewModel.addPlots(sheet.row, count.typed)
    }
}
