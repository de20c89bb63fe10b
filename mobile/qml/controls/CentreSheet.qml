pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// The centre of a plot by the mean of many fixes.
Sheet {
    id: sheet

    required property string plot
    required property CentreViewModel viewModel

    title: qsTr("Centre of %1").arg(sheet.plot)
    onOpened: sheet.viewModel.begin()
    onClosed: sheet.viewModel.end()

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
            text: qsTr("Look up before you wait here. Lay the tablet on the centre stake and leave it there.")
            font.bold: true
        }
        FigureBlock {
            figure: sheet.viewModel.fixes
            caption: qsTr("fixes in the mean")
        }
        FigureBlock {
            figure: sheet.viewModel.spread
            caption: qsTr("spread of the fixes")
        }
        FigureBlock {
            figure: sheet.viewModel.accuracy
            caption: qsTr("accuracy, kept with the plot")
        }
        Words {
            Layout.fillWidth: true
            visible: !sheet.viewModel.poor
            text: sheet.viewModel.words
        }
        ProblemWords {
            Layout.fillWidth: true
            problem: sheet.viewModel.poor ? sheet.viewModel.words : ""
        }
    }
    TapButton {
        Layout.fillWidth: true
        text: sheet.viewModel.poor ? qsTr("Keep it, marked as poor") : qsTr("Keep this position")
        main: true
        large: true
        enabled: sheet.viewModel.known
        onClicked: sheet.viewModel.keep()
    }
}
