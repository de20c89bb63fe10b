import QtQuick
import QtQuick.Layouts
import Oaklight

// The tree in hand, read from an arm's length: its tag, what it is, where it is. It stands beside what is tapped.
RowLayout {
    id: tree

    required property StumpsViewModel viewModel

    spacing: Theme.gap

    Words {
        text: tree.viewModel.tag
        font.pixelSize: Theme.figure
        font.bold: true
        wrapMode: Text.NoWrap
        Accessible.role: Accessible.Heading
        Accessible.name: qsTr("Tag %1").arg(text)
    }
    ColumnLayout {
        Layout.fillWidth: true
        spacing: 0

        Words {
            Layout.fillWidth: true
            text: tree.viewModel.tree
            font.pixelSize: Theme.large
            font.bold: true
        }
        Words {
            Layout.fillWidth: true
            visible: tree.viewModel.way !== ""
            text: tree.viewModel.way
        }
        Words {
            Layout.fillWidth: true
            text: tree.viewModel.state
        }
    }
}
