import QtQuick
import Oaklight

// Text as every page shows it.
Text {
    color: Theme.ink
    font.pixelSize: Theme.body
    wrapMode: Text.Wrap
    textFormat: Text.PlainText
}
