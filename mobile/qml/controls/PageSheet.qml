pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// The pages by name, where there is no room for the rail.
Sheet {
    id: sheet

    required property AppModel app

    title: qsTr("Pages")

    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true
        spacing: Theme.pad

        Repeater {
            model: sheet.app.pageNames

            TapButton {
                required property int index
                required property string modelData

                Layout.fillWidth: true
                visible: modelData !== ""
                small: true
                text: modelData
                iconName: sheet.app.pageIcon(index)
                checked: sheet.app.page === index
                onClicked: {
                    sheet.app.page = index;
                    sheet.close();
                }
            }
        }
    }
}
