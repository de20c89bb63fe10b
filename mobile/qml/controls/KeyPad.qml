pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Digits in three rows of three with zero below in the middle. There is no decimal key: digits fill
// a field of a fixed form, so that a slip is never a factor of ten.
GridLayout {
    id: pad

    property string digits: ""
    property int most: 4
    property string cornerText: ""
    property bool cornerOn: false

    signal corner

    function type(digit) {
        if (pad.digits.length < pad.most)
            pad.digits = pad.digits.concat(digit);
    }

    columns: 3
    columnSpacing: 0
    rowSpacing: 0
    focus: true
    Keys.onPressed: event => {
        if (event.text >= "0" && event.text <= "9" && event.text.length === 1) {
            pad.type(event.text);
            event.accepted = true;
        } else if (event.key === Qt.Key_Backspace) {
            pad.digits = pad.digits.slice(0, -1);
            event.accepted = true;
        }
    }

    Repeater {
        model: ["1", "2", "3", "4", "5", "6", "7", "8", "9"]

        TapButton {
            required property string modelData

            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.preferredWidth: 1
            Layout.minimumWidth: Theme.touchSmall  // rather less wide than off the glass
            letters: Theme.figure
            text: modelData
            onClicked: pad.type(modelData)
        }
    }
    TapButton {
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.preferredWidth: 1
        Layout.minimumWidth: Theme.touchSmall
        text: pad.cornerText
        checked: pad.cornerOn
        visible: pad.cornerText !== ""
        onClicked: pad.corner()
    }
    Item {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        visible: pad.cornerText === ""
    }
    TapButton {
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.preferredWidth: 1
        Layout.minimumWidth: Theme.touchSmall
        letters: Theme.figure
        text: "0"
        onClicked: pad.type("0")
    }
    TapButton {
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.preferredWidth: 1
        Layout.minimumWidth: Theme.touchSmall
        text: qsTr("Delete digit")
        enabled: pad.digits !== ""
        onClicked: pad.digits = pad.digits.slice(0, -1)
    }
}
