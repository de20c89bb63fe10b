pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Whether this point is counted or measured, and what was counted at it.
Sheet {
    id: sheet

    required property PointViewModel point

    atTree: true
    title: sheet.point.plotName

    Connections {
        target: sheet.point

        function onTaken() {
            sheet.close();
        }
    }

    ProblemWords {
        Layout.fillWidth: true
        problem: sheet.point.problem
    }
    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true

        TapButton {
            Layout.fillWidth: true
            text: qsTr("Measure point")
            help: qsTr("Each tree with its size")
            large: true
            checked: !sheet.point.counting
            enabled: sheet.point.may
            onClicked: sheet.point.makeCounting(false)
        }
        Words {
            Layout.fillWidth: true
            text: qsTr("Each tree with its size; sawlog trees with logs and height.")
        }
        TapButton {
            Layout.fillWidth: true
            Layout.topMargin: Theme.gap
            text: qsTr("Count point")
            help: qsTr("Trees by species, without sizes")
            large: true
            checked: sheet.point.counting
            enabled: sheet.point.may
            onClicked: sheet.point.makeCounting(true)
        }
        Words {
            Layout.fillWidth: true
            text: qsTr("How many trees of which species are in. No sizes.")
        }
        Words {
            Layout.fillWidth: true
            Layout.topMargin: Theme.gap
            visible: counted.count > 0
            text: qsTr("Counted here")
            font.bold: true
        }
        Repeater {
            id: counted

            model: sheet.point.counted

            // On a phone the name stands above its buttons: between them it has no room.
            GridLayout {
                id: line

                required property int index
                required property string modelData

                Layout.fillWidth: true
                columns: Theme.phone ? 2 : 3
                columnSpacing: Theme.pad
                rowSpacing: Theme.pad

                Words {
                    Layout.fillWidth: true
                    Layout.columnSpan: Theme.phone ? 2 : 1
                    text: line.modelData
                    font.pixelSize: Theme.large
                    font.bold: true
                }
                TapButton {
                    Layout.fillWidth: Theme.phone
                    text: qsTr("One less: %1").arg(line.modelData)
                    iconName: "minus"
                    display: TapButton.IconOnly
                    enabled: sheet.point.may
                    onClicked: sheet.point.count(line.index, false)
                }
                TapButton {
                    Layout.fillWidth: Theme.phone
                    text: qsTr("One more: %1").arg(line.modelData)
                    iconName: "plus"
                    display: TapButton.IconOnly
                    enabled: sheet.point.may
                    onClicked: sheet.point.count(line.index, true)
                }
            }
        }
    }
}
