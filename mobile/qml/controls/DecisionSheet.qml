pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// A person decides one tree of a card: what, and why.
Sheet {
    id: sheet

    required property CardViewModel card
    property int row: -1
    property bool crop: false
    property bool byHand: false
    property int verdict: -1
    // How it stands now: what a person overrules.
    property string now: ""
    property string nowIcon: ""
    property string nowWhy: ""

    signal lookAsked

    function show(row) {
        sheet.row = row;
        sheet.verdict = -1;
        why.text = "";
        sheet.crop = sheet.card.trees.isCrop(row);
        sheet.byHand = sheet.card.trees.isByHand(row);
        sheet.title = sheet.card.trees.titleOf(row);
        sheet.now = sheet.card.trees.nowOf(row);
        sheet.nowIcon = sheet.card.trees.iconOf(row);
        sheet.nowWhy = sheet.card.trees.reasonOf(row);
        all.toTop();
        sheet.open();
    }

    ScrollColumn {
        id: all

        Layout.fillWidth: true
        Layout.fillHeight: true

        RowLayout {
            Layout.fillWidth: true
            spacing: Theme.pad

            Icon {
                name: sheet.nowIcon
            }
            Words {
                Layout.fillWidth: true
                text: qsTr("Now: %1").arg(sheet.now)
                font.pixelSize: Theme.large
                font.bold: true
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }
        }
        Words {
            Layout.fillWidth: true
            visible: text !== ""
            text: sheet.nowWhy
        }
        TapButton {
            Layout.fillWidth: true
            visible: sheet.byHand
            text: qsTr("Take my decision back")
            help: qsTr("The rules decide this tree again")
            iconName: "undo"
            onClicked: {
                sheet.card.takeBack(sheet.row);
                sheet.close();
            }
        }
        Words {
            Layout.fillWidth: true
            text: qsTr("Decide it yourself")
            font.bold: true
        }
        GridLayout {
            Layout.fillWidth: true
            columns: 2
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap

            Repeater {
                model: sheet.card.verdicts

                TapButton {
                    required property int index
                    required property string modelData

                    Layout.fillWidth: true
                    Layout.preferredWidth: 1
                    text: modelData
                    iconName: sheet.card.verdictIcons[index]
                    checked: sheet.verdict === index
                    onClicked: sheet.verdict = index
                }
            }
        }
        Words {
            Layout.fillWidth: true
            visible: sheet.verdict >= 0
            text: qsTr("Why?")
            font.bold: true
        }
        Repeater {
            model: sheet.card.reasons(sheet.verdict)

            TapButton {
                required property string modelData

                Layout.fillWidth: true
                visible: sheet.verdict >= 0
                small: true
                text: modelData
                checked: why.text === modelData
                onClicked: why.text = modelData
            }
        }
        TextLine {
            id: why

            Layout.fillWidth: true
            visible: sheet.verdict >= 0
            placeholderText: qsTr("Or in your own words")
            Accessible.name: qsTr("The reason, in your own words")
        }
        Item {
            Layout.preferredHeight: Theme.gap
        }
        TapButton {
            Layout.fillWidth: true
            text: qsTr("Look at this tree again")
            help: qsTr("Correct its species, size, crown and how it stands")
            iconName: "look"
            onClicked: {
                sheet.close();
                sheet.lookAsked();
            }
        }
        TapButton {
            Layout.fillWidth: true
            visible: !sheet.crop
            text: qsTr("Give it a card of its own")
            iconName: "light"
            onClicked: {
                sheet.card.makeCropTree(sheet.row);
                sheet.close();
            }
        }
        Item {
            Layout.preferredHeight: Theme.apart
        }
        TapButton {
            Layout.fillWidth: true
            text: sheet.crop ? qsTr("Remove this card") : qsTr("Take it off this card")
            help: qsTr("Undo brings it back")
            iconName: "minus"
            onClicked: {
                sheet.card.remove(sheet.row);
                sheet.close();
            }
        }
    }
    // Below all that scrolls: whoever told why finds at once how to go on.
    TapButton {
        Layout.fillWidth: true
        visible: sheet.verdict >= 0
        text: sheet.verdict >= 0 ? qsTr("Decide: %1").arg(sheet.card.verdicts[sheet.verdict]) : ""
        main: true
        large: true
        enabled: why.text.trim() !== ""
        onClicked: {
            sheet.card.overrule(sheet.row, sheet.verdict, why.text);
            sheet.close();
        }
    }
}
