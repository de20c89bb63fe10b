pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Seedlings by species and height. A dash is "not counted", 0 is "looked, and none".
Sheet {
    id: sheet

    required property SeedlingViewModel viewModel

    signal speciesAsked

    atTree: true

    title: sheet.viewModel.plotSize === "" ? qsTr("Seedlings") : qsTr("Seedlings on %1").arg(sheet.viewModel.plotSize)

    Words {
        Layout.fillWidth: true
        visible: sheet.viewModel.plotSize === ""
        text: qsTr("This cruise tells no size of a seedling plot, so nothing can be counted for an acre.")
    }
    ListView {
        Layout.fillWidth: true
        Layout.fillHeight: true
        clip: true
        spacing: Theme.gap
        model: sheet.viewModel
        delegate: ColumnLayout {
            id: row

            required property int index
            required property string name
            required property var counts

            width: ListView.view.width
            spacing: 0

            Words {
                text: row.name
                font.bold: true
            }
            Repeater {
                model: sheet.viewModel.heights

                ColumnLayout {
                    id: cell

                    required property int index
                    required property string modelData

                    Layout.fillWidth: true
                    spacing: 0

                    Words {
                        Layout.fillWidth: true
                        text: cell.modelData
                    }
                    RowLayout {
                        Layout.fillWidth: true
                        spacing: 0

                        TapButton {
                            text: qsTr("One less: %1, %2").arg(row.name).arg(cell.modelData)
                            iconName: "minus"
                            display: TapButton.IconOnly
                            onClicked: sheet.viewModel.less(row.index, cell.index)
                        }
                        Words {
                            Layout.fillWidth: true
                            text: row.counts[cell.index]
                            font.pixelSize: Theme.large
                            font.bold: true
                            horizontalAlignment: Text.AlignHCenter
                        }
                        TapButton {
                            text: qsTr("One more: %1, %2").arg(row.name).arg(cell.modelData)
                            iconName: "plus"
                            display: TapButton.IconOnly
                            onClicked: sheet.viewModel.more(row.index, cell.index)
                        }
                    }
                }
            }
        }
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Another species")
        onClicked: sheet.speciesAsked()
    }
}
