pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// On which paper.
RowLayout {
    id: choice

    required property PagesViewModel source

    spacing: Theme.pad

    Repeater {
        model: choice.source.papers

        TapButton {
            required property int index
            required property string modelData

            Layout.fillWidth: true
            Layout.preferredWidth: 1
            small: true
            text: modelData
            checked: choice.source.paper === index
            onClicked: choice.source.paper = index
        }
    }
}
