pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// What the plots say of a stand: figures with their error, what it needs, and pictures of it.
Item {
    id: page

    required property AppModel app
    required property Workspace workspace
    readonly property StandViewModel viewModel: page.workspace.stand

    Component.onCompleted: page.viewModel.setShown(true)
    Component.onDestruction: page.viewModel.setShown(false)

    Flickable {
        id: scroll

        anchors.fill: parent
        anchors.leftMargin: Theme.edge
        anchors.rightMargin: Theme.edge
        contentHeight: column.implicitHeight
        boundsBehavior: Flickable.StopAtBounds
        clip: true

        ColumnLayout {
            id: column

            width: scroll.width
            spacing: Theme.gap

            GridLayout {
                Layout.fillWidth: true
                Layout.topMargin: Theme.gap
                columns: Theme.phone ? 2 : 4
                columnSpacing: Theme.gap
                rowSpacing: Theme.gap

                Repeater {
                    model: page.viewModel.stands

                    TapButton {
                        required property int index
                        required property string modelData

                        Layout.fillWidth: true
                        Layout.preferredWidth: 1
                        text: modelData
                        help: qsTr("Shows its figures")
                        checked: page.viewModel.stand === index
                        onClicked: page.viewModel.stand = index
                    }
                }
            }
            Words {
                Layout.fillWidth: true
                visible: page.viewModel.problem !== ""
                text: page.viewModel.problem
                font.pixelSize: Theme.large
                Accessible.role: Accessible.AlertMessage
                Accessible.name: text
            }
            Words {
                Layout.fillWidth: true
                visible: text !== ""
                text: page.viewModel.summary
            }
            GridLayout {
                Layout.fillWidth: true
                columns: Theme.phone ? 1 : Theme.wide ? 3 : 2
                columnSpacing: Theme.gap
                rowSpacing: Theme.gap

                Repeater {
                    model: page.viewModel.figures

                    FigureCell {
                        required property int index

                        Layout.fillWidth: true
                        Layout.fillHeight: true
                        Layout.preferredWidth: 1
                        onClicked: {
                            page.viewModel.explain(index);
                            sheet.open();
                        }
                    }
                }
            }
            SentenceButton {
                Layout.fillWidth: true
                visible: text !== ""
                text: page.viewModel.advice
                help: qsTr("Tells the whole advice and its rules")
                iconName: "light"
                onClicked: {
                    page.viewModel.explainAdvice();
                    sheet.open();
                }
            }
            SentenceButton {
                Layout.fillWidth: true
                visible: text !== ""
                text: page.viewModel.need
                help: qsTr("Tells how it was computed")
                iconName: "walk"
                onClicked: {
                    page.viewModel.explainNeed();
                    sheet.open();
                }
            }
            GridLayout {
                Layout.fillWidth: true
                columns: Theme.wide ? 2 : 1
                columnSpacing: Theme.gap
                rowSpacing: Theme.gap

                StandPicture {
                    Layout.fillWidth: true
                    Layout.preferredWidth: 1
                    visible: page.viewModel.composition.present
                    title: qsTr("What it is made of")
                    picture: page.viewModel.composition
                    metric: page.app.settings.metric
                }
                StandPicture {
                    Layout.fillWidth: true
                    Layout.preferredWidth: 1
                    visible: page.viewModel.diameters.present
                    title: qsTr("How many trees of which size")
                    picture: page.viewModel.diameters
                    metric: page.app.settings.metric
                }
                StandPicture {
                    Layout.fillWidth: true
                    Layout.preferredWidth: 1
                    Layout.columnSpan: Theme.wide ? 2 : 1
                    visible: page.viewModel.stocking.present
                    title: qsTr("How full it stands")
                    picture: page.viewModel.stocking
                    metric: page.app.settings.metric
                }
            }
            SourceSentence {
                Layout.fillWidth: true
                visible: text !== ""
                text: fits.words
                keys: ["local_curve", "crown_width", "local_volume"]
            }
            GridLayout {
                Layout.fillWidth: true
                Layout.bottomMargin: Theme.gap
                columns: Theme.wide ? 2 : 1
                columnSpacing: Theme.gap
                rowSpacing: Theme.gap

                Repeater {
                    model: FitListModel {
                        id: fits

                        workspace: page.workspace
                    }

                    StandPicture {
                        required property int index

                        Layout.fillWidth: true
                        Layout.preferredWidth: 1
                        picture: fits.pictureAt(index)
                        metric: page.app.settings.metric
                    }
                }
            }
        }
    }

    NoteSheet {
        id: sheet

        title: page.viewModel.noteTitle
        note: page.viewModel.note
    }
}
