pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Several tablets, one tract: choose files, see what comes in, and decide what both changed, one question at a time.
Sheet {
    id: sheet

    required property JoinViewModel viewModel

    function begin() {
        sheet.viewModel.begin();
        sheet.open();
    }

    title: qsTr("Join tablets")
    whole: true
    onClosed: sheet.viewModel.end()

    ProblemWords {
        Layout.fillWidth: true
        problem: sheet.viewModel.problem
    }
    ScrollColumn {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.phone ? Theme.pad : 0
        Layout.fillHeight: true

        Words {
            Layout.fillWidth: true
            visible: text !== ""
            text: sheet.viewModel.notice
            font.pixelSize: Theme.small
            font.bold: true
            wrapMode: Text.Wrap
        }
        QuestionCard {
            Layout.fillWidth: true
            visible: sheet.viewModel.open > 0
            viewModel: sheet.viewModel
        }
        Words {
            Layout.fillWidth: true
            text: qsTr("Files to join with this one. They stay as they are.")
            font.bold: true
        }
        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            Repeater {
                model: sheet.viewModel.files

                ListRow {
                    required property int index
                    required property string modelData

                    Layout.fillWidth: true
                    text: modelData
                    status: sheet.viewModel.chosen[index] ?? ""
                    checked: status !== ""
                    onClicked: sheet.viewModel.toggle(index)
                }
            }
        }
        Repeater {
            model: sheet.viewModel.rows

            Words {
                required property string modelData

                Layout.fillWidth: true
                text: modelData
                wrapMode: Text.Wrap
            }
        }
        LabelledLine {
            id: path

            Layout.fillWidth: true
            label: qsTr("A file elsewhere")
            help: qsTr("Its whole path, ending in .gpkg")
            onEntered: sheet.viewModel.addFile(path.typed)
        }
        TapButton {
            Layout.fillWidth: true
            text: qsTr("Add that file")
            enabled: path.typed !== ""
            onClicked: sheet.viewModel.addFile(path.typed)
        }
        TapButton {
            Layout.fillWidth: true
            visible: sheet.viewModel.otherTract
            text: qsTr("All are of one tract")
            help: qsTr("Only when the crews know that they are")
            onClicked: sheet.viewModel.takeAsOneTract()
        }
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Join")
        main: enabled
        large: true
        // Where there is something to decide, its room is needed.
        visible: sheet.viewModel.ready || sheet.viewModel.open === 0
        enabled: sheet.viewModel.ready
        onClicked: sheet.viewModel.join()
    }
}
