import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Oaklight

// Things in a column that scrolls when there are more than fit.
Flickable {
    id: scroll

    default property alias body: column.data
    property alias spacing: column.spacing

    function toTop() {
        scroll.contentY = 0;
    }

    contentWidth: width
    contentHeight: column.implicitHeight
    boundsBehavior: Flickable.StopAtBounds
    flickableDirection: Flickable.VerticalFlick
    clip: true
    implicitHeight: column.implicitHeight

    T.ScrollBar.vertical: T.ScrollBar {
        implicitWidth: Theme.strong
        visible: size < 1

        contentItem: Rectangle {
            color: Theme.soft
            radius: Theme.corner
        }
    }

    ColumnLayout {
        id: column

        anchors.left: parent.left
        anchors.right: parent.right
        anchors.rightMargin: Theme.pad  // clear of the bar
        spacing: Theme.gap
    }
}
