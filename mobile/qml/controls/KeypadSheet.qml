import QtQuick
import QtQuick.Layouts
import Oaklight

// A measured diameter by keypad.
Sheet {
    id: sheet

    // How the digits read: "12.3 in". Whoever opens the sheet binds it.
    property string reading: pad.digits
    property alias digits: pad.digits
    property string note: ""
    property string enterText: qsTr("Record")
    property alias cornerText: pad.cornerText
    property alias cornerOn: pad.cornerOn

    signal entered(string digits)
    signal corner

    atTree: true
    headline: pad.digits === "" ? qsTr("Type the diameter") : sheet.reading
    subline: sheet.note
    onOpened: pad.forceActiveFocus()
    onClosed: pad.digits = ""

    GridLayout {
        Layout.fillWidth: true
        Layout.fillHeight: true
        columns: Theme.wide ? 2 : 1
        columnSpacing: Theme.gap
        rowSpacing: Theme.pad

        KeyPad {
            id: pad

            Layout.fillWidth: true
            Layout.fillHeight: true
            onCorner: sheet.corner()
        }
        // Beside the keys where they need the height.
        TapButton {
            Layout.fillWidth: !Theme.wide
            Layout.fillHeight: Theme.wide
            Layout.preferredWidth: Theme.wide ? Theme.recordWidth : -1
            text: sheet.enterText
            main: true
            large: true
            enabled: pad.digits !== ""
            onClicked: {
                sheet.entered(pad.digits);
                pad.digits = "";
            }
        }
    }
}
