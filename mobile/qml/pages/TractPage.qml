import QtQuick
import Oaklight

Item {
    id: page

    required property AppModel app

    Words {
        anchors.centerIn: parent
        text: page.app.pageNames[0]
    }
}
