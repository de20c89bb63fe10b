pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// How near the stand is to each floor and ceiling, in words and as a bar.
ColumnLayout {
    id: guards

    required property GuardListModel model
    // Those that hold with room to spare are shown on request only.
    property bool all: false

    spacing: Theme.pad

    Words {
        Layout.fillWidth: true
        visible: guards.model.count === 0
        text: qsTr("Guards are not known yet: they need the plots of the stand, and how much of it was walked.")
    }
    SourceSentence {
        Layout.fillWidth: true
        visible: guards.model.count > 0
        text: qsTr("Guards of the stand, with the marked trees gone")
        keys: ["after_release", "guard_stocking", "basal_area", "crown_competition"]
    }
    Repeater {
        model: guards.model

        ColumnLayout {
            id: guard

            required property string words
            required property string standing
            required property string stateWords
            required property string rule
            required property real share
            required property real limit
            readonly property bool calm: guard.standing === "holds"

            Layout.fillWidth: true
            visible: guards.all || !guard.calm
            spacing: 0
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1. %2").arg(guard.stateWords).arg(guard.words)

            RowLayout {
                Layout.fillWidth: true
                spacing: Theme.pad

                Icon {
                    name: guard.calm ? "tick" : "caution"
                    side: Theme.body
                }
                Words {
                    text: guard.stateWords
                    font.bold: true
                    Accessible.ignored: true
                }
                Words {
                    Layout.fillWidth: true
                    text: guard.rule
                    color: Theme.soft
                    font.pixelSize: Theme.small
                    horizontalAlignment: Text.AlignRight
                    Accessible.ignored: true
                }
            }
            Words {
                Layout.fillWidth: true
                text: guard.words
                Accessible.ignored: true
            }
            ShareBar {
                Layout.fillWidth: true
                Layout.preferredHeight: Theme.gap
                share: guard.share
                limit: guard.limit
                ground: Theme.panel
                fill: guard.calm ? Theme.leaf : Theme.warn
                ink: Theme.ink
                line: Theme.strong
            }
        }
    }
    TapButton {
        Layout.fillWidth: true
        visible: guards.model.count > 0
        small: true
        text: guards.all ? qsTr("Show those near their limit only") : qsTr("%1 of %2 hold: show them").arg(guards.model.calm).arg(guards.model.count)
        onClicked: guards.all = !guards.all
    }
}
