pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// One thing that two tablets left to decide: what each says, side by side, with a button below each.
ColumnLayout {
    id: card

    required property JoinViewModel viewModel
    readonly property bool named: card.viewModel.answer === JoinViewModel.Name || card.viewModel.answer === JoinViewModel.NameOrOne
    readonly property list<string> letters: ["A", "B", "C", "D", "E"]

    spacing: Theme.pad

    Words {
        Layout.fillWidth: true
        text: card.viewModel.question[0] ?? ""
        font.bold: true
        wrapMode: Text.Wrap
        Accessible.role: Accessible.Heading
        Accessible.name: text
    }
    GridLayout {
        Layout.fillWidth: true
        columns: Theme.phone ? 1 : 2
        columnSpacing: Theme.gap
        rowSpacing: Theme.gap

        Repeater {
            model: card.viewModel.sides

            ColumnLayout {
                id: side

                required property int index
                required property string modelData

                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.alignment: Qt.AlignTop
                spacing: Theme.pad

                Words {
                    Layout.fillWidth: true
                    text: qsTr("%1: %2").arg(card.letters[side.index] ?? "").arg(side.modelData)
                    wrapMode: Text.Wrap
                }
                LabelledLine {
                    id: fresh

                    Layout.fillWidth: true
                    visible: card.named
                    label: qsTr("Another name for %1").arg(card.letters[side.index] ?? "")
                    onEntered: card.viewModel.nameAnew(side.index, fresh.typed)
                }
                TapButton {
                    Layout.fillWidth: true
                    large: true
                    text: card.named ? qsTr("%1 gets this name").arg(card.letters[side.index] ?? "") : qsTr("%1 holds").arg(card.letters[side.index] ?? "")
                    enabled: !card.named || fresh.typed !== ""
                    onClicked: card.named ? card.viewModel.nameAnew(side.index, fresh.typed) : card.viewModel.decide(side.index)
                }
            }
        }
    }
    TapButton {
        Layout.fillWidth: true
        visible: card.viewModel.answer === JoinViewModel.NameOrOne
        text: qsTr("A and B are the same one")
        large: true
        onClicked: card.viewModel.putTogether()
    }
    Words {
        Layout.fillWidth: true
        text: card.viewModel.question[1] ?? ""
        color: Theme.soft
        wrapMode: Text.Wrap
    }
    TapButton {
        Layout.fillWidth: true
        visible: card.viewModel.open > 1
        text: qsTr("Next of %1").arg(card.viewModel.open)
        onClicked: card.viewModel.next()
    }
}
