import QtQuick
import Oaklight

Item {
    id: page

    required property AppModel app
    required property Workspace workspace

    Words {
        anchors.centerIn: parent
        text: page.app.pageNames[page.app.page]
    }
}
