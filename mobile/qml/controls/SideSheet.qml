import QtQuick
import QtQuick.Layouts
import Oaklight

// What a person sees on one side of the crown.
Sheet {
    id: sheet

    required property CardViewModel card
    property int side: 0
    readonly property list<string> names: [qsTr("North"), qsTr("East"), qsTr("South"), qsTr("West")]

    signal neighbourAsked

    title: qsTr("%1: %2").arg(sheet.names[sheet.side]).arg(sheet.card.sides[sheet.side])

    Words {
        Layout.fillWidth: true
        text: qsTr("Stand at the stem, face this side, look up: what crowds the crown?")
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Looked: it is open")
        iconName: "tick"
        onClicked: {
            sheet.card.lookOpen(sheet.side);
            sheet.close();
        }
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("A neighbour stands here")
        iconName: "plus"
        main: true
        onClicked: {
            sheet.close();
            sheet.neighbourAsked();
        }
    }
    TapButton {
        Layout.fillWidth: true
        visible: sheet.card.looked[sheet.side]
        text: qsTr("Nobody looked after all")
        onClicked: {
            sheet.card.unlook(sheet.side);
            sheet.close();
        }
    }
    Item {
        Layout.fillHeight: true
    }
}
