pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Whether a tree near the edge of the plot is in or out, and by how much.
Sheet {
    id: sheet

    required property BorderViewModel viewModel

    title: qsTr("Border tree")
    onOpened: {
        sheet.viewModel.clear();
        pad.digits = "";
        pad.forceActiveFocus();
    }

    Words {
        Layout.fillWidth: true
        text: sheet.viewModel.answer !== "" ? sheet.viewModel.answer : qsTr("Type diameter and distance")
        font.pixelSize: Theme.figure
        font.bold: true
        fontSizeMode: Text.HorizontalFit
        minimumPixelSize: Theme.body
        horizontalAlignment: Text.AlignHCenter
        Accessible.role: Accessible.AlertMessage
        Accessible.name: text
    }
    Words {
        Layout.fillWidth: true
        text: sheet.viewModel.note
        color: Theme.soft
        font.pixelSize: Theme.small
        horizontalAlignment: Text.AlignHCenter
    }
    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.pad

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
    }
    RowLayout {
        Layout.fillWidth: true
        spacing: Theme.pad

        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Tape ends at the bark")
            checked: sheet.viewModel.toFace
            onClicked: sheet.viewModel.toFace = true
        }
        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("At the middle of the stem")
            checked: !sheet.viewModel.toFace
            onClicked: sheet.viewModel.toFace = false
        }
    }
    KeyPad {
        id: pad

        Layout.fillWidth: true
        Layout.fillHeight: true
        onDigitsChanged: sheet.viewModel.digits = pad.digits
    }
}
