pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// How many plots, and where each lies: looked at first, then kept.
Sheet {
    id: sheet

    required property LayoutViewModel viewModel
    required property TurnsViewModel turns

    title: qsTr("Lay out plots")
    onOpened: {
        sheet.viewModel.begin();
        all.toTop();
    }

    Connections {
        target: sheet.viewModel

        function onKept() {
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

        ColumnLayout {
            Layout.fillWidth: true
            visible: sheet.viewModel.rows.length > 0
            spacing: Theme.pad

            Repeater {
                model: sheet.viewModel.rows

                Words {
                    required property int index
                    required property string modelData

                    Layout.fillWidth: true
                    text: modelData
                    font.bold: index === 0
                }
            }
        }
        Choices {
            Layout.fillWidth: true
            label: qsTr("What the cruise is to reach")
            columns: Theme.phone ? 2 : 4
            options: sheet.viewModel.goals
            chosen: sheet.viewModel.goal
            onPicked: row => sheet.viewModel.goal = row
        }
        LabelledLine {
            Layout.fillWidth: true
            label: sheet.viewModel.goals[sheet.viewModel.goal]
            text: sheet.viewModel.amount
            inputMethodHints: Qt.ImhFormattedNumbersOnly
            onEdited: text => sheet.viewModel.amount = text
        }
        Words {
            Layout.fillWidth: true
            visible: sheet.viewModel.goal === LayoutViewModel.Error
            text: qsTr("Of basal area, at 95 % confidence")
            color: Theme.soft
            font.pixelSize: Theme.small
        }
        Choices {
            Layout.fillWidth: true
            label: qsTr("Kind of wood, if not measured")
            columns: Theme.phone ? 1 : 3
            options: sheet.viewModel.kinds
            chosen: sheet.viewModel.kind
            onPicked: row => sheet.viewModel.kind = row
        }
        Choices {
            Layout.fillWidth: true
            label: qsTr("How plots are shared among stands")
            columns: 2
            options: [qsTr("by area"), qsTr("by area and spread")]
            chosen: sheet.viewModel.bySpread ? 1 : 0
            onPicked: row => sheet.viewModel.bySpread = row === 1
        }
        TurnChoices {
            Layout.fillWidth: true
            turns: sheet.turns
        }
        Choices {
            Layout.fillWidth: true
            label: qsTr("How plots lie")
            columns: 2
            options: [qsTr("on a grid"), qsTr("by chance")]
            chosen: sheet.viewModel.random ? 1 : 0
            onPicked: row => sheet.viewModel.random = row === 1
        }
        LabelledLine {
            Layout.fillWidth: true
            visible: !sheet.viewModel.random
            label: qsTr("Lines of the grid, degrees from TRUE north")
            help: qsTr("Across the slope, not along a ridge or a road")
            text: sheet.viewModel.azimuth
            inputMethodHints: Qt.ImhFormattedNumbersOnly
            onEdited: text => sheet.viewModel.azimuth = text
        }
        LabelledLine {
            Layout.fillWidth: true
            label: qsTr("Seed of the start by chance")
            help: qsTr("The same seed brings the same plots. Do not try seeds until one fits")
            text: sheet.viewModel.seed
            inputMethodHints: Qt.ImhDigitsOnly
            onEdited: text => sheet.viewModel.seed = text
        }
    }
    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.pad

        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Look at it")
            large: true
            main: sheet.viewModel.rows.length === 0
            onClicked: {
                sheet.viewModel.layOut();
                all.toTop();
            }
        }
        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Keep these plots")
            large: true
            main: enabled
            enabled: sheet.viewModel.rows.length > 0
            onClicked: sheet.viewModel.keep()
        }
    }
}
