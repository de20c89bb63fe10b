import QtQuick
import QtQuick.Layouts
import Oaklight

// A measured diameter by keypad. It stays open, so that the next tree needs no tap more.
Sheet {
    id: sheet

    // How the digits read: "12.3 in". Whoever opens the sheet binds it.
    property string reading: pad.digits
    property alias digits: pad.digits
    property string note: ""
    property string enterText: qsTr("Record")

    signal entered(string digits)

    onOpened: pad.forceActiveFocus()
    onClosed: pad.digits = ""

    Words {
        Layout.fillWidth: true
        text: pad.digits === "" ? qsTr("Type the diameter") : sheet.reading
        font.pixelSize: Theme.figure
        font.bold: true
        horizontalAlignment: Text.AlignHCenter
        fontSizeMode: Text.HorizontalFit
        minimumPixelSize: Theme.body
    }
    Words {
        Layout.fillWidth: true
        visible: sheet.note !== ""
        text: sheet.note
        color: Theme.soft
        horizontalAlignment: Text.AlignHCenter
    }
    KeyPad {
        id: pad

        Layout.fillWidth: true
        Layout.fillHeight: true
    }
    TapButton {
        Layout.fillWidth: true
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
