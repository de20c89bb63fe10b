import QtQuick
import QtQuick.Layouts
import Oaklight

// How the stand of the plot at hand stands so far, and how many plots are still needed.
ColumnLayout {
    id: now

    required property StandNowViewModel viewModel

    visible: now.viewModel.text !== ""
    spacing: 0

    Words {
        Layout.fillWidth: true
        text: now.viewModel.text
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }
    Words {
        Layout.fillWidth: true
        visible: text !== ""
        text: now.viewModel.need
        color: Theme.soft
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }
}
