pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Which marks are listed, and what all of them amount to.
ColumnLayout {
    id: filters

    required property MarksViewModel viewModel

    spacing: Theme.gap

    TextLine {
        id: tag

        Layout.fillWidth: true
        placeholderText: qsTr("Find a tag")
        Accessible.name: qsTr("Find a tag")
        text: filters.viewModel.tag
        inputMethodHints: Qt.ImhNoPredictiveText
        onTextEdited: filters.viewModel.tag = tag.text
    }
    ChipTable {
        Layout.fillWidth: true
        columns: Theme.wide || Theme.phone ? 2 : 3
        small: true
        model: filters.viewModel.verdicts
        onTapped: row => filters.viewModel.chooseVerdict(row)
    }
    Words {
        Layout.fillWidth: true
        text: filters.viewModel.working ? qsTr("Working \u2026") : filters.viewModel.shown
        font.bold: true
    }
    Repeater {
        model: filters.viewModel.totals

        SourceSentence {
            required property string modelData

            Layout.fillWidth: true
            text: modelData
            keys: ["tree_list", "board_feet", "cords", "local_volume"]
        }
    }
    ChipTable {
        Layout.fillWidth: true
        columns: Theme.wide || Theme.phone ? 1 : 3
        small: true
        model: filters.viewModel.readers
        onTapped: row => filters.viewModel.chooseReader(row)
    }
}
