pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// The outline of a stand: out of a file, drawn, or walked. What would change is shown before it is kept.
Sheet {
    id: sheet

    required property BoundaryViewModel viewModel
    required property bool metric

    function begin(stand: string) {
        sheet.viewModel.begin(stand);
        sheet.open();
    }

    title: sheet.viewModel.stand === "" ? qsTr("Outlines") : qsTr("Outline of %1").arg(sheet.viewModel.stand)
    onClosed: sheet.viewModel.end()

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
        Layout.fillWidth: true
        Layout.fillHeight: true

        Choices {
            Layout.fillWidth: true
            visible: sheet.viewModel.stand !== ""
            label: qsTr("Where the outline comes from")
            options: [qsTr("A file"), qsTr("Drawn on the map"), qsTr("Walked")]
            chosen: sheet.viewModel.way
            onPicked: row => sheet.viewModel.way = row
        }
        Words {
            Layout.fillWidth: true
            text: sheet.viewModel.note
        }
        Repeater {
            model: sheet.viewModel.rows

            Words {
                required property string modelData

                Layout.fillWidth: true
                text: modelData
                font.bold: true
            }
        }
        Choices {
            Layout.fillWidth: true
            visible: sheet.viewModel.sound
            label: qsTr("Area of the stand from now on")
            columns: 2
            options: [qsTr("as stated"), qsTr("as drawn")]
            chosen: sheet.viewModel.takeArea ? 1 : 0
            onPicked: row => sheet.viewModel.takeArea = row === 1
        }
        ColumnLayout {
            Layout.fillWidth: true
            visible: sheet.viewModel.way === BoundaryViewModel.File
            spacing: Theme.pad

            Repeater {
                model: sheet.viewModel.files

                ListRow {
                    required property int index
                    required property string modelData

                    Layout.fillWidth: true
                    text: modelData
                    onClicked: sheet.viewModel.chooseFile(index)
                }
            }
            LabelledLine {
                id: path

                Layout.fillWidth: true
                label: qsTr("A file elsewhere")
                help: qsTr("Its whole path")
                onEntered: sheet.viewModel.readFile(path.typed)
            }
            TapButton {
                Layout.fillWidth: true
                text: qsTr("Read that file")
                enabled: path.typed !== ""
                onClicked: sheet.viewModel.readFile(path.typed)
            }
        }
        RowLayout {
            Layout.fillWidth: true
            visible: sheet.viewModel.way === BoundaryViewModel.Walk
            spacing: Theme.pad

            TapButton {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                text: sheet.viewModel.walking ? qsTr("Stop") : qsTr("Start walking")
                onClicked: sheet.viewModel.walking ? sheet.viewModel.stopWalk() : sheet.viewModel.startWalk()
            }
            TapButton {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                text: qsTr("Corner here")
                onClicked: sheet.viewModel.addHere()
            }
        }
        RowLayout {
            Layout.fillWidth: true
            visible: sheet.viewModel.way !== BoundaryViewModel.File
            spacing: Theme.pad

            Words {
                Layout.fillWidth: true
                text: sheet.viewModel.corners
                font.bold: true
            }
            TapButton {
                text: qsTr("Take back the last corner")
                enabled: sheet.viewModel.corners !== ""
                onClicked: sheet.viewModel.undo()
            }
        }
        PictureItem {
            id: map

            Layout.fillWidth: true
            Layout.preferredHeight: Theme.mapHeight
            visible: sheet.viewModel.way !== BoundaryViewModel.File
            theme: Theme
            picture: sheet.viewModel.map
            metric: sheet.metric
            Accessible.role: Accessible.Graphic
            Accessible.name: map.words

            MouseArea {
                anchors.fill: parent
                onClicked: mouse => sheet.viewModel.tap(map.inDrawing(Qt.point(mouse.x, mouse.y)), map.inDrawing(Qt.point(map.width, map.height)))
            }
        }
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Keep the outline")
        main: true
        large: true
        enabled: sheet.viewModel.sound
        onClicked: sheet.viewModel.keep()
    }
}
