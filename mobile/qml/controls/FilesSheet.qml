pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Tract files: make one, open one, give one away. Nothing here is lost by opening another: each tap was saved.
Sheet {
    id: sheet

    required property AppModel app

    signal joinAsked

    title: qsTr("Tract files")
    onOpened: sheet.app.lookForFiles()

    Connections {
        target: sheet.app

        function onWorkspaceChanged() {
            sheet.close();
        }
    }

    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true

        ProblemWords {
            Layout.fillWidth: true
            problem: sheet.app.problem
        }
        Words {
            Layout.fillWidth: true
            visible: text !== ""
            text: sheet.app.opening ? qsTr("Opening the tract \u2026") : sheet.app.notice
            font.bold: true
            wrapMode: Text.WrapAnywhere
        }
        LabelledLine {
            id: fresh

            Layout.fillWidth: true
            label: qsTr("Name of a new tract")
            onEntered: make.clicked()
        }
        TapButton {
            id: make

            Layout.fillWidth: true
            text: qsTr("Make a new tract")
            enabled: fresh.typed !== ""
            main: enabled
            onClicked: sheet.app.createTract(fresh.typed)
        }
        Words {
            Layout.fillWidth: true
            visible: recent.count > 0
            text: qsTr("Opened before")
            font.bold: true
        }
        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            Repeater {
                id: recent

                model: sheet.app.recentNames

                ListRow {
                    required property int index
                    required property string modelData

                    Layout.fillWidth: true
                    text: modelData
                    onClicked: sheet.app.openRecent(index)
                }
            }
        }
        TapButton {
            Layout.fillWidth: true
            text: qsTr("Open the demo tract")
            onClicked: sheet.app.openDemo()
        }
        TapButton {
            Layout.fillWidth: true
            text: qsTr("Copy for a friend")
            help: qsTr("One clean file beside the open one")
            onClicked: sheet.app.copyForFriend()
        }
        TapButton {
            Layout.fillWidth: true
            text: qsTr("Join files of other tablets")
            help: qsTr("Their work and ours in one file")
            onClicked: {
                sheet.close();
                sheet.joinAsked();
            }
        }
        Words {
            Layout.fillWidth: true
            visible: all.count > 0
            text: qsTr("All files in the app's folder")
            font.bold: true
        }
        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            Repeater {
                id: all

                model: sheet.app.fileNames

                ListRow {
                    required property int index
                    required property string modelData

                    Layout.fillWidth: true
                    text: modelData
                    onClicked: sheet.app.openNamed(index)
                }
            }
        }
        LabelledLine {
            id: path

            Layout.fillWidth: true
            label: qsTr("A file elsewhere")
            help: qsTr("Its whole path, ending in .gpkg")
            onEntered: sheet.app.openFile(path.typed)
        }
        TapButton {
            Layout.fillWidth: true
            text: qsTr("Open that file")
            enabled: path.typed !== ""
            onClicked: sheet.app.openFile(path.typed)
        }
    }
}
