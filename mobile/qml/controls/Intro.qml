pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// What the app is for, in three pictures that can be skipped, and a caution that cannot.
Rectangle {
    id: intro

    required property Settings settings
    property int card: 0
    readonly property list<string> pictures: ["intro_tally", "intro_light", "intro_marks", "intro_caution"]
    readonly property list<string> sentences: [qsTr("Tally a tree with one gesture: press its species, slide to its diameter, lift."), qsTr("Stand at a good oak, tell who crowds it on each side, and see how much light each cut buys."), qsTr("Mark the trees, and hand over a list that cannot be misread."), qsTr("No app replaces looking up. Dead limbs, hung trees and leaning stems kill people: look at every tree again before you work under it.")]
    readonly property list<int> following: [1, 2, 3, 3]
    readonly property bool caution: intro.card === 3

    onVisibleChanged: intro.card = 0
    color: Theme.ground
    focus: intro.visible

    // Nothing below is touched through it.
    MouseArea {
        anchors.fill: parent
    }

    GridLayout {
        anchors.fill: parent
        anchors.margins: Theme.edge
        columns: Theme.wide ? 2 : 1
        columnSpacing: Theme.apart
        rowSpacing: Theme.gap

        Item {
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.preferredWidth: 1

            Image {
                anchors.fill: parent
                source: Theme.icon(intro.pictures[intro.card], Theme.ink)
                sourceSize.width: Theme.pictureSide
                sourceSize.height: Theme.pictureSide
                fillMode: Image.PreserveAspectFit
                Accessible.ignored: true
            }
        }
        ColumnLayout {
            Layout.fillWidth: true
            Layout.fillHeight: Theme.wide
            Layout.preferredWidth: 1
            spacing: Theme.gap

            Item {
                Layout.fillHeight: true
            }
            RowLayout {
                visible: intro.caution
                spacing: Theme.pad

                Icon {
                    name: "caution"
                    side: Theme.figure
                }
                Words {
                    text: qsTr("Caution")
                    font.pixelSize: Theme.figure
                    font.bold: true
                    wrapMode: Text.NoWrap
                }
            }
            Words {
                Layout.fillWidth: true
                Layout.maximumWidth: Theme.readWidth
                text: intro.sentences[intro.card]
                font.pixelSize: Theme.large
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }
            Item {
                Layout.fillHeight: true
            }
            RowLayout {
                Layout.fillWidth: true
                Layout.maximumWidth: Theme.readWidth
                spacing: Theme.apart

                TapButton {
                    visible: !intro.caution
                    text: qsTr("Skip")
                    help: qsTr("Goes on to the caution")
                    onClicked: intro.card = 3
                }
                TapButton {
                    Layout.fillWidth: true
                    text: intro.caution ? qsTr("I look up. Begin") : qsTr("Next")
                    main: true
                    large: true
                    onClicked: {
                        if (intro.caution) {
                            intro.settings.introSeen = true;
                        } else {
                            intro.card = intro.following[intro.card];
                        }
                    }
                }
            }
        }
    }
}
