import QtQuick
import QtQuick.Layouts
import Oaklight

// The way to a plot: an arrow, and large figures to set a compass by.
GridLayout {
    id: way

    required property WalkViewModel viewModel

    columns: Theme.phone ? 1 : 2
    columnSpacing: Theme.gap
    rowSpacing: Theme.pad

    Compass {
        Layout.alignment: Theme.phone ? Qt.AlignHCenter : Qt.AlignTop
        Layout.preferredWidth: Theme.compassWidth
        Layout.preferredHeight: Theme.compassWidth
        azimuth: way.viewModel.azimuth
        spoken: qsTr("Arrow to %1 from true north; north is up").arg(way.viewModel.bearing)
    }
    ColumnLayout {
        Layout.fillWidth: true
        Layout.alignment: Qt.AlignTop
        spacing: Theme.pad

        FigureBlock {
            figure: qsTr("%1 TRUE").arg(way.viewModel.bearing)
            caption: qsTr("set your compass to (%1)").arg(way.viewModel.figures[2] ?? "")
        }
        GridLayout {
            columns: Theme.phone ? 1 : 2
            columnSpacing: Theme.gap
            rowSpacing: Theme.pad

            FigureBlock {
                figure: way.viewModel.figures[0] ?? ""
                caption: qsTr("level distance")
            }
            FigureBlock {
                figure: way.viewModel.figures[1] ?? ""
                caption: qsTr("of your paces")
            }
        }
    }
}
