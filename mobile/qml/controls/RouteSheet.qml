pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// The shortest walk by all plots to do.
Sheet {
    id: sheet

    required property RouteViewModel viewModel

    title: qsTr("Plan the walk")

    ProblemWords {
        Layout.fillWidth: true
        problem: sheet.viewModel.problem
    }
    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true
        spacing: Theme.pad

        Words {
            Layout.fillWidth: true
            text: qsTr("A bearing is no path: go round water, cliffs, dead and leaning trees, and look up first. Do not enter a neighbour's land without leave.")
            font.bold: true
        }
        Words {
            Layout.fillWidth: true
            visible: !sheet.viewModel.planned
            text: sheet.viewModel.busy ? qsTr("Looking for the shortest walk.") : qsTr("From where you are, else from the landing, by every plot to do and back. Streams and neighbour lines of the map are not crossed, but where a road or trail crosses a stream.")
        }
        Repeater {
            model: sheet.viewModel.words

            Words {
                required property string modelData

                Layout.fillWidth: true
                text: modelData
            }
        }
        Repeater {
            model: sheet.viewModel.stops

            Words {
                required property string modelData

                Layout.fillWidth: true
                text: modelData
                font.bold: true
            }
        }
    }
    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.pad

        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Forget the plan")
            help: qsTr("Goes to the nearest plot each time")
            large: true
            enabled: sheet.viewModel.planned
            onClicked: sheet.viewModel.drop()
        }
        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: sheet.viewModel.planned ? qsTr("Plan again from here") : qsTr("Plan it")
            main: true
            large: true
            enabled: !sheet.viewModel.busy
            onClicked: sheet.viewModel.plan()
        }
    }
}
