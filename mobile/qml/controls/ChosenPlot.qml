import QtQuick
import QtQuick.Layouts
import Oaklight

// The plot that was tapped on the map, and the ways on from it.
Rectangle {
    id: bar

    required property TractViewModel viewModel

    signal walkAsked
    signal tallyAsked

    visible: bar.viewModel.chosen !== ""
    implicitHeight: row.implicitHeight
    color: Theme.panel

    GridLayout {
        id: row

        anchors.fill: parent
        anchors.leftMargin: Theme.edge
        anchors.rightMargin: Theme.edge
        columns: Theme.phone ? 1 : 2
        columnSpacing: Theme.pad
        rowSpacing: 0

        RowLayout {
            Layout.fillWidth: true
            Layout.topMargin: Theme.pad
            spacing: Theme.pad

            Icon {
                name: bar.viewModel.chosenMark
            }
            Words {
                Layout.fillWidth: true
                text: bar.viewModel.chosen
                font.pixelSize: Theme.large
                font.bold: true
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }
        }
        RowLayout {
            Layout.topMargin: Theme.pad
            Layout.bottomMargin: Theme.pad
            spacing: Theme.pad

            TapButton {
                Layout.fillWidth: true
                text: qsTr("Walk there")
                iconName: "walk"
                onClicked: bar.walkAsked()
            }
            TapButton {
                Layout.fillWidth: true
                text: qsTr("Tally")
                iconName: "tally"
                onClicked: bar.tallyAsked()
            }
            TapButton {
                text: qsTr("Put away")
                iconName: "cross"
                display: TapButton.IconOnly
                onClicked: bar.viewModel.chooseNothing()
            }
        }
    }
}
