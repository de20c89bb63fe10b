import QtQuick
import Oaklight

Item {
    id: page

    required property Settings settings

    Words {
        anchors.centerIn: parent
        text: page.settings.language
    }
}
