import QtQuick
import QtQuick.Layouts
import Oaklight

// The way to a plot: an arrow, and large figures to set a compass by.
GridLayout {
    id: way

    required property WayViewModel viewModel

    columns: Theme.phone ? 1 : 2
    columnSpacing: Theme.gap
    rowSpacing: Theme.pad

    ColumnLayout {
        Layout.alignment: Theme.phone ? Qt.AlignHCenter : Qt.AlignTop
        spacing: 0

        Compass {
            Layout.alignment: Qt.AlignHCenter
            Layout.preferredWidth: Theme.compassWidth
            Layout.preferredHeight: Theme.compassWidth
            arrow: way.viewModel.arrow
            north: way.viewModel.north
            spoken: qsTr("Arrow to %1. %2").arg(way.viewModel.bearing).arg(way.viewModel.up)
        }
        Words {
            Layout.preferredWidth: Theme.compassWidth
            text: way.viewModel.up
            font.pixelSize: Theme.small
            horizontalAlignment: Text.AlignHCenter
        }
    }
    ColumnLayout {
        Layout.fillWidth: true
        Layout.alignment: Qt.AlignTop
        spacing: Theme.pad

        FigureBlock {
            figure: way.viewModel.bearing
            caption: qsTr("set your compass to (%1)").arg(way.viewModel.direction)
        }
        GridLayout {
            columns: Theme.phone ? 1 : 2
            columnSpacing: Theme.gap
            rowSpacing: Theme.pad

            FigureBlock {
                figure: way.viewModel.distance
                caption: qsTr("level distance")
            }
            FigureBlock {
                figure: way.viewModel.paces
                caption: qsTr("of your paces")
            }
        }
    }
}
