import QtQuick
import QtQuick.Layouts
import Oaklight

// The crop tree cards of a stand: light now and after, card by card.
ColumnLayout {
    id: cards

    required property LightViewModel viewModel

    signal standAsked
    signal cropTreeAsked
    signal walkedAsked

    spacing: 0

    RowLayout {
        Layout.fillWidth: true
        Layout.fillHeight: true
        spacing: Theme.gap
        layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

        TapList {
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.leftMargin: Theme.phone ? 0 : Theme.edge
            Layout.rightMargin: Theme.wide || Theme.phone ? 0 : Theme.edge
            viewModel: cards.viewModel
            model: cards.viewModel.cards
            delegate: CardRow {
            }
            header: StandAdviceHeader {
            }
            onRowTapped: row => cards.viewModel.openCard(row)
            onHeaderTapped: cards.standAsked()
            onWalkedAsked: cards.walkedAsked()
        }
        ScrollColumn {
            Layout.preferredWidth: Theme.columnWidth
            Layout.fillHeight: true
            Layout.rightMargin: Theme.leftHand ? 0 : Theme.edge
            Layout.leftMargin: Theme.leftHand ? Theme.edge : 0
            visible: Theme.wide

            StandAdvice {
                Layout.fillWidth: true
                Layout.topMargin: Theme.gap
                viewModel: cards.viewModel
                onStandAsked: cards.standAsked()
                onWalkedAsked: cards.walkedAsked()
            }
        }
    }

    RowLayout {
        Layout.fillWidth: true
        Layout.leftMargin: Theme.edge
        Layout.rightMargin: Theme.edge
        Layout.topMargin: Theme.pad
        Layout.bottomMargin: Theme.edge
        spacing: Theme.gap

        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("New crop tree")
            iconName: Theme.phone ? "" : "plus"
            enabled: cards.viewModel.stand >= 0
            onClicked: cards.cropTreeAsked()
        }
        TapButton {
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            text: qsTr("Decide this stand")
            help: qsTr("Stores what is advised. What was decided by hand stays")
            main: true
            enabled: cards.viewModel.cards.count > 0
            onClicked: cards.viewModel.decide()
        }
    }
}
