pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// What kills people in a fresh cut, above everything else.
Rectangle {
    id: warning

    required property var lines

    implicitHeight: column.implicitHeight
    color: Theme.warn
    radius: Theme.corner

    ColumnLayout {
        id: column

        anchors.left: parent.left
        anchors.right: parent.right
        anchors.margins: Theme.pad
        spacing: 0

        Repeater {
            model: warning.lines

            Words {
                required property string modelData

                Layout.fillWidth: true
                topPadding: Theme.seam
                bottomPadding: Theme.seam
                text: modelData
                color: Theme.onWarn
                font.bold: true
            }
        }
    }
}
