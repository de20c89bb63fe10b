import QtQuick
import QtQuick.Layouts
import Oaklight

// What was recorded last, or would be if the finger were lifted now, to be read at arm's length. Its
// height never changes: cells must not move under a finger.
Rectangle {
    id: bar

    required property TallyViewModel viewModel
    required property PointViewModel point
    // How the stand stands so far; "" where nothing has room for it. It takes the place of the pinned
    // species, which shows in its cell, but not of how to begin.
    property string stand: ""
    readonly property color inkNow: bar.viewModel.doubt !== "" ? Theme.onWarn : Theme.ink
    readonly property string hint: bar.viewModel.closed !== "" ? bar.viewModel.closed : bar.viewModel.doubt !== "" ? bar.viewModel.doubt : Theme.phone ? (bar.point.kind !== "" ? bar.point.kind : bar.viewModel.pinnedName) : bar.viewModel.pinnedName !== "" && bar.stand !== "" ? bar.stand : bar.viewModel.pinnedName !== "" ? qsTr("Pinned: %1").arg(bar.viewModel.pinnedName) : (bar.point.counting ? qsTr("Press a species, slide to Count, lift") : qsTr("Press a species, slide to the diameter, lift"))

    signal pointAsked

    implicitHeight: Theme.readingHeight
    color: bar.viewModel.doubt !== "" ? Theme.warn : Theme.ground

    RowLayout {
        anchors.fill: parent
        anchors.leftMargin: Theme.edge
        anchors.rightMargin: Theme.edge
        spacing: Theme.gap

        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0

            Words {
                Layout.fillWidth: true
                Layout.fillHeight: true
                text: bar.viewModel.reading !== "" ? bar.viewModel.reading : bar.viewModel.plotName
                color: bar.inkNow
                font.pixelSize: Theme.figure
                font.bold: true
                fontSizeMode: Text.Fit
                minimumPixelSize: Theme.small
                verticalAlignment: Text.AlignBottom
                wrapMode: Text.NoWrap
                elide: Text.ElideRight
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }
            RowLayout {
                Layout.fillWidth: true
                spacing: Theme.gap

                Words {
                    visible: text !== "" && (!Theme.phone || bar.viewModel.doubt === "")
                    text: bar.viewModel.figures.length > 1 ? bar.viewModel.figures[1] : ""
                    color: bar.inkNow
                    font.bold: true
                    wrapMode: Text.NoWrap
                    Accessible.role: Accessible.StaticText
                    Accessible.name: qsTr("Basal area: %1").arg(text)
                }
                Words {
                    Layout.fillWidth: true
                    text: bar.hint
                    color: bar.inkNow
                    wrapMode: Text.NoWrap
                    fontSizeMode: Text.HorizontalFit
                    minimumPixelSize: Theme.small
                    elide: Text.ElideRight
                    Accessible.role: Accessible.StaticText
                    Accessible.name: text
                }
            }
        }
        // On a phone the words are beside the figure, and the way to change them under More.
        TapButton {
            visible: !Theme.phone && bar.point.kind !== ""
            text: bar.point.kind
            help: qsTr("Makes this point a count point or a measure point")
            onClicked: bar.pointAsked()
        }
        FigureBlock {
            figure: bar.viewModel.figures.length > 0 ? bar.viewModel.figures[0] : ""
            caption: Theme.phone ? "" : qsTr("trees")
            spoken: qsTr("trees")
            ink: bar.inkNow
        }
    }
}
