pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// One crop tree card: the crown, its sides, and each tree with its verdict.
RowLayout {
    id: page

    required property LightViewModel viewModel
    required property bool metric

    signal sideTapped(int side)
    signal treeTapped(int row)

    spacing: Theme.gap

    CrownSides {
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.margins: Theme.edge
        Layout.rightMargin: 0
        visible: Theme.wide
        card: page.viewModel.card
        metric: page.metric
        onSideTapped: side => page.sideTapped(side)
    }
    ColumnLayout {
        Layout.fillWidth: !Theme.wide
        Layout.preferredWidth: Theme.wide ? Theme.cardWidth : 1
        Layout.leftMargin: Theme.wide ? 0 : Theme.edge
        Layout.rightMargin: Theme.edge
        Layout.topMargin: Theme.pad
        spacing: Theme.pad

        RowLayout {
            Layout.fillWidth: true
            spacing: Theme.gap

            TapButton {
                text: qsTr("All cards")
                onClicked: page.viewModel.closeCard()
            }
            Words {
                Layout.fillWidth: true
                text: page.viewModel.card.title
                font.pixelSize: Theme.phone ? Theme.body : Theme.large
                font.bold: true
                Accessible.role: Accessible.Heading
                Accessible.name: text
            }
        }
        ScrollColumn {
            Layout.fillWidth: true
            Layout.fillHeight: true

            LightFigures {
                Layout.fillWidth: true
                card: page.viewModel.card
            }
            Words {
                Layout.fillWidth: true
                visible: text !== ""
                text: page.viewModel.working ? qsTr("Working \u2026") : page.viewModel.problem
            }
            CrownSides {
                Layout.fillWidth: true
                Layout.preferredHeight: Theme.crownHeight
                visible: !Theme.wide
                card: page.viewModel.card
                metric: page.metric
                onSideTapped: side => page.sideTapped(side)
            }
            Repeater {
                model: page.viewModel.card.trees

                CardTreeRow {
                    required property int index

                    Layout.fillWidth: true
                    onClicked: page.treeTapped(index)
                }
            }
            Item {
                Layout.preferredHeight: Theme.edge
            }
        }
    }
}
