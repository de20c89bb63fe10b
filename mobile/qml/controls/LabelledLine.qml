import QtQuick
import QtQuick.Layouts
import Oaklight

// A line to type, under the name of what is typed.
ColumnLayout {
    id: labelled

    required property string label
    property string help: ""
    property string text: ""
    property int inputMethodHints: Qt.ImhNone
    readonly property string typed: line.text

    signal edited(string text)
    signal entered

    function take(text: string) {
        line.text = text;
    }

    function focusLine() {
        line.forceActiveFocus();
    }

    spacing: 0
    onTextChanged: line.text = labelled.text

    Words {
        Layout.fillWidth: true
        text: labelled.label
        font.bold: true
        wrapMode: Text.NoWrap
        fontSizeMode: Text.HorizontalFit
        minimumPixelSize: Theme.small
        elide: Text.ElideRight
        Accessible.ignored: true
    }
    Words {
        Layout.fillWidth: true
        visible: labelled.help !== ""
        text: labelled.help
        color: Theme.soft
        font.pixelSize: Theme.small
        Accessible.ignored: true
    }
    TextLine {
        id: line

        Layout.fillWidth: true
        text: labelled.text
        inputMethodHints: labelled.inputMethodHints
        Accessible.name: labelled.label
        Accessible.description: labelled.help
        onTextEdited: labelled.edited(line.text)
        onAccepted: labelled.entered()
    }
}
