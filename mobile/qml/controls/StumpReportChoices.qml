pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// What an audit by sample is to rule out, and on which paper.
ColumnLayout {
    id: choices

    required property StumpReportViewModel source

    spacing: Theme.gap

    Words {
        Layout.fillWidth: true
        text: choices.source.auditHead
        font.bold: true
    }
    GridLayout {
        Layout.fillWidth: true
        columns: 2
        columnSpacing: Theme.pad
        rowSpacing: Theme.pad

        Repeater {
            model: choices.source.audits

            TapButton {
                required property int index
                required property string modelData

                Layout.fillWidth: true
                Layout.preferredWidth: 1
                small: true
                text: modelData
                checked: choices.source.audit === index
                onClicked: choices.source.audit = index
            }
        }
    }
    PaperChoice {
        Layout.fillWidth: true
        source: choices.source
    }
    Words {
        Layout.fillWidth: true
        visible: text !== ""
        text: choices.source.problem
        font.bold: true
        Accessible.role: Accessible.AlertMessage
        Accessible.name: text
    }
    SourceSentence {
        Layout.fillWidth: true
        visible: text !== ""
        text: choices.source.summary
        keys: ["tree_list", "audit", "stump_dbh", "board_feet", "cords"]
    }
}
