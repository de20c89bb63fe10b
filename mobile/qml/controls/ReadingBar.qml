import QtQuick
import QtQuick.Layouts
import Oaklight

// What was recorded last, or would be if the finger were lifted now, to be read at arm's length.
Rectangle {
    id: bar

    required property TallyViewModel viewModel

    implicitHeight: row.implicitHeight
    color: bar.viewModel.doubt !== "" ? Theme.warn : Theme.ground

    RowLayout {
        id: row

        anchors.fill: parent
        anchors.leftMargin: Theme.edge
        anchors.rightMargin: Theme.edge
        spacing: Theme.gap

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            Words {
                Layout.fillWidth: true
                text: bar.viewModel.reading !== "" ? bar.viewModel.reading : bar.viewModel.plotName
                color: bar.viewModel.doubt !== "" ? Theme.onWarn : Theme.ink
                font.pixelSize: Theme.figure
                font.bold: true
                fontSizeMode: Text.HorizontalFit
                minimumPixelSize: Theme.body
                wrapMode: Text.NoWrap
                elide: Text.ElideRight
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }
            Words {
                Layout.fillWidth: true
                text: bar.viewModel.closed !== "" ? bar.viewModel.closed : bar.viewModel.doubt !== "" ? bar.viewModel.doubt : bar.viewModel.pinnedName !== "" ? qsTr("Pinned: %1").arg(bar.viewModel.pinnedName) : qsTr("Press a species, slide to the diameter, lift")
                color: bar.viewModel.doubt !== "" ? Theme.onWarn : Theme.soft
                elide: Text.ElideRight
                maximumLineCount: 2
            }
        }
        FigureBlock {
            figure: bar.viewModel.figures.length > 0 ? bar.viewModel.figures[0] : ""
            caption: qsTr("trees")
        }
        FigureBlock {
            visible: !Theme.phone
            figure: bar.viewModel.figures.length > 1 ? bar.viewModel.figures[1] : ""
            caption: qsTr("basal area")
        }
    }
}
