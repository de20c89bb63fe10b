import QtQuick
import QtQuick.Layouts
import Oaklight

// One picture of a stand under its title.
ColumnLayout {
    id: panel

    required property string title
    property alias picture: item.picture
    property alias metric: item.metric

    spacing: Theme.pad

    Words {
        Layout.fillWidth: true
        text: panel.title
        font.bold: true
        Accessible.role: Accessible.Heading
        Accessible.name: text
    }
    PictureItem {
        id: item

        Layout.fillWidth: true
        Layout.preferredHeight: Theme.chartHeight
        theme: Theme
        Accessible.role: Accessible.Graphic
        Accessible.name: words
    }
}
