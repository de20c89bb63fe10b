pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Whether a tree near the edge of the plot is in or out, and by how much.
Sheet {
    id: sheet

    required property BorderViewModel viewModel

    title: qsTr("Border tree")
    headline: sheet.viewModel.answer !== "" ? sheet.viewModel.answer : Theme.phone ? qsTr("Diameter, distance") : qsTr("Type diameter and distance")
    subline: sheet.viewModel.note
    atTree: true
    whole: true
    onOpened: {
        sheet.viewModel.clear();
        pad.digits = "";
        pad.forceActiveFocus();
    }

    GridLayout {
        Layout.fillWidth: true
        Layout.fillHeight: true
        columns: Theme.wide ? 2 : 1
        columnSpacing: Theme.gap
        rowSpacing: Theme.seam

        KeyPad {
            id: pad

            Layout.row: Theme.wide ? 0 : 1
            Layout.column: 0
            Layout.fillWidth: true
            Layout.fillHeight: true
            onDigitsChanged: sheet.viewModel.digits = pad.digits
        }
        GridLayout {
            Layout.row: 0
            Layout.column: Theme.wide ? 1 : 0
            Layout.fillWidth: !Theme.wide
            Layout.preferredWidth: Theme.recordWidth
            Layout.alignment: Qt.AlignTop
            columns: Theme.wide ? 1 : 3
            columnSpacing: Theme.seam
            rowSpacing: Theme.seam

            Repeater {
                model: sheet.viewModel.names

                TapButton {
                    required property int index
                    required property string modelData

                    Layout.fillWidth: true
                    Layout.preferredWidth: 1
                    text: sheet.viewModel.readings[index]
                    subtext: modelData
                    spoken: qsTr("%1: %2").arg(modelData).arg(text)
                    checked: sheet.viewModel.field === index
                    onClicked: {
                        sheet.viewModel.field = index;
                        pad.digits = sheet.viewModel.digits;
                    }
                }
            }
            // One of the two is so, and a tap changes it.
            TapButton {
                Layout.fillWidth: true
                Layout.columnSpan: Theme.wide ? 1 : 3
                text: sheet.viewModel.toFace ? qsTr("Tape ends at the bark") : qsTr("Tape ends at the middle of the stem")
                help: qsTr("A tap changes it")
                onClicked: sheet.viewModel.toFace = !sheet.viewModel.toFace
            }
        }
    }
}
