pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// What is to be known of the tree in hand before it is touched, and what was noted last.
ColumnLayout {
    id: hand

    required property StumpsViewModel viewModel

    spacing: Theme.pad

    SourceSentence {
        Layout.fillWidth: true
        visible: text !== ""
        text: hand.viewModel.progress
        keys: ["tree_list", "stump_dbh"]
    }
    Words {
        Layout.fillWidth: true
        visible: hand.viewModel.tag === ""
        text: hand.viewModel.leaving ? qsTr("Choose a tree that was to be left, if it was cut or hurt.") : qsTr("Every tree of the list was looked at.")
        font.pixelSize: Theme.large
        font.bold: true
    }
    Repeater {
        model: hand.viewModel.cautions

        RowLayout {
            id: caution

            required property string modelData

            Layout.fillWidth: true
            spacing: Theme.pad

            Icon {
                Layout.alignment: Qt.AlignTop
                name: "caution"
            }
            Words {
                Layout.fillWidth: true
                text: caution.modelData
                font.bold: true
            }
        }
    }
    Choices {
        Layout.fillWidth: true
        visible: hand.viewModel.may & StumpsViewModel.Hurt
        label: qsTr("Its worst wound, if it is hurt")
        help: qsTr("Large: 100 square inches of bare wood, or half of the girth.")
        columns: Theme.phone ? 2 : 4
        options: hand.viewModel.wounds()
        onPicked: row => hand.viewModel.noteWound(row)
    }
    Words {
        Layout.fillWidth: true
        visible: hand.viewModel.said !== ""
        text: qsTr("Noted: %1").arg(hand.viewModel.said)
        font.pixelSize: Theme.large
    }
}
