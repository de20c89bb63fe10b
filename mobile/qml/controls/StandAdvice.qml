import QtQuick
import QtQuick.Layouts
import Oaklight

// The stand of the cards: which one, what is advised for it, and its guards.
ColumnLayout {
    id: panel

    required property LightViewModel viewModel

    signal standAsked
    signal walkedAsked

    spacing: Theme.gap

    TapButton {
        Layout.fillWidth: true
        visible: panel.viewModel.stand >= 0
        text: panel.viewModel.stand >= 0 ? panel.viewModel.stands[panel.viewModel.stand] : ""
        subtext: panel.viewModel.stands.length > 1 ? qsTr("Stand. Tap for another") : qsTr("Stand")
        enabled: panel.viewModel.stands.length > 1
        opacity: 1
        onClicked: panel.standAsked()
    }
    Words {
        Layout.fillWidth: true
        visible: text !== ""
        text: panel.viewModel.problem !== "" ? panel.viewModel.problem : panel.viewModel.cards.count === 0 ? qsTr("No crop tree cards in this stand. Stand at a good oak and make the first.") : ""
    }
    SourceSentence {
        Layout.fillWidth: true
        visible: text !== "" && panel.viewModel.problem === "" && panel.viewModel.cards.count > 0
        text: panel.viewModel.advice
        keys: ["guard_stocking", "interval"]
    }
    WalkedAsk {
        Layout.fillWidth: true
        visible: panel.viewModel.unwalked >= 0
        onAsked: panel.walkedAsked()
    }
    Words {
        Layout.fillWidth: true
        visible: text !== ""
        text: panel.viewModel.notice
        font.bold: true
        Accessible.role: Accessible.AlertMessage
        Accessible.name: text
    }
    Words {
        Layout.fillWidth: true
        visible: panel.viewModel.working
        text: qsTr("Working \u2026")
    }
    GuardRows {
        Layout.fillWidth: true
        visible: panel.viewModel.advice !== "" && panel.viewModel.cards.count > 0 && panel.viewModel.problem === ""
        model: panel.viewModel.guards
    }
}
