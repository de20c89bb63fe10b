pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// What a person chooses once for this device, and what the app is.
Item {
    id: page

    required property AppModel app
    required property Workspace workspace
    readonly property SetupViewModel viewModel: page.workspace.setup
    readonly property Settings settings: page.app.settings

    ScrollColumn {
        anchors.fill: parent
        anchors.margins: Theme.edge

        GridLayout {
            Layout.fillWidth: true
            columns: Theme.phone ? 1 : 2
            columnSpacing: Theme.apart
            rowSpacing: Theme.gap

            Choices {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("Light")
                options: [qsTr("Day"), qsTr("Bright sun"), qsTr("Night")]
                chosen: page.settings.light
                onPicked: row => page.settings.light = row
            }
            Choices {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("Size of buttons")
                columns: 2
                options: [qsTr("For gloves"), qsTr("For bare hands")]
                chosen: page.settings.gloves ? 0 : 1
                onPicked: row => page.settings.gloves = row === 0
            }
            Choices {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("Side of the buttons")
                columns: 2
                options: [qsTr("Left hand"), qsTr("Right hand")]
                chosen: page.settings.leftHand ? 0 : 1
                onPicked: row => page.settings.leftHand = row === 0
            }
            Choices {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("Units")
                columns: 2
                options: [qsTr("in, ac"), qsTr("cm, ha")]
                chosen: page.settings.metric ? 1 : 0
                onPicked: row => page.settings.metric = row === 1
            }
            Choices {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("Language")
                columns: 2
                options: page.viewModel.languages
                chosen: page.viewModel.language
                onPicked: row => page.viewModel.language = row
            }
            Choices {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("Volume keys, up and down")
                columns: 2
                options: [qsTr("Again, undo"), qsTr("Volume")]
                chosen: page.settings.volumeKeys ? 0 : 1
                onPicked: row => page.settings.volumeKeys = row === 0
            }
            Choices {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("Error to reach, at 95 %")
                columns: Theme.wide ? 4 : 2
                options: page.viewModel.errors
                chosen: page.viewModel.error
                onPicked: row => page.viewModel.error = row
            }
            ColumnLayout {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                spacing: Theme.pad

                LabelledLine {
                    Layout.fillWidth: true
                    label: page.viewModel.pacesLabel
                    text: page.viewModel.paces
                    inputMethodHints: Qt.ImhDigitsOnly
                    onEdited: text => page.viewModel.typePaces(text)
                }
                ProblemWords {
                    Layout.fillWidth: true
                    problem: page.viewModel.pacesProblem
                }
            }
            Choices {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("Bearings of the walk")
                columns: 2
                options: [qsTr("TRUE"), qsTr("MAGNETIC")]
                chosen: page.settings.magnetic ? 1 : 0
                onPicked: row => page.settings.magnetic = row === 1
            }
            Choices {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("Ways, where areas are acres")
                columns: 2
                options: [qsTr("feet"), qsTr("chains")]
                chosen: page.settings.chains ? 1 : 0
                onPicked: row => page.settings.chains = row === 1
            }
            Choices {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("A position is poor beyond")
                columns: 2
                options: page.viewModel.limits
                chosen: page.viewModel.limit
                onPicked: row => page.viewModel.limit = row
            }
            LabelledLine {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("GNSS receiver")
                help: qsTr("Empty: the tablet's own. Else a serial device, socket://host:port, or none")
                text: page.settings.receiver
                inputMethodHints: Qt.ImhNoPredictiveText
                onEdited: text => page.settings.receiver = text
            }
            LabelledLine {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("Copies of the tract")
                help: qsTr("Empty: beside the tract. Else a folder on a card or another disk")
                text: page.settings.snapshotFolder
                inputMethodHints: Qt.ImhNoPredictiveText
                onEdited: text => page.settings.snapshotFolder = text
            }
            Choices {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                label: qsTr("Species first in the tally")
                columns: 1
                options: page.viewModel.tallySets
                chosen: page.viewModel.tallySet
                onPicked: row => page.viewModel.tallySet = row
            }
        }
        Words {
            Layout.fillWidth: true
            Layout.topMargin: Theme.gap
            text: qsTr("About Oaklight")
            font.pixelSize: Theme.large
            font.bold: true
            Accessible.role: Accessible.Heading
            Accessible.name: text
        }
        Repeater {
            model: page.viewModel.about

            Words {
                required property string modelData

                Layout.fillWidth: true
                Layout.maximumWidth: Theme.readWidth
                text: modelData
            }
        }
        TapButton {
            text: qsTr("Show the first pictures again")
            Layout.fillWidth: true
            Layout.maximumWidth: Theme.readWidth
            Layout.bottomMargin: Theme.gap
            onClicked: page.settings.introSeen = false
        }
    }
}
