pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// One of a few, side by side under the name of what is chosen.
ColumnLayout {
    id: choices

    required property string label
    required property var options
    property string help: ""
    property int chosen: -1
    property int columns: 3

    signal picked(int row)

    spacing: Theme.pad

    Words {
        Layout.fillWidth: true
        visible: choices.label !== ""
        text: choices.label
        font.bold: true
        // One line: a height that hangs on the width is settled too late for a grid of these.
        wrapMode: Text.NoWrap
        fontSizeMode: Text.HorizontalFit
        minimumPixelSize: Theme.small
        elide: Text.ElideRight
    }
    GridLayout {
        Layout.fillWidth: true
        columns: choices.columns
        columnSpacing: Theme.pad
        rowSpacing: Theme.pad

        Repeater {
            model: choices.options

            TapButton {
                required property int index
                required property string modelData

                Layout.fillWidth: true
                Layout.preferredWidth: 1
                Layout.preferredHeight: Theme.touchLines
                small: true
                text: modelData
                lines: 3
                help: choices.label
                checkable: false
                checked: choices.chosen === index
                onClicked: choices.picked(index)
            }
        }
    }
    Words {
        Layout.fillWidth: true
        visible: choices.help !== ""
        text: choices.help
        color: Theme.soft
        font.pixelSize: Theme.small
    }
}
