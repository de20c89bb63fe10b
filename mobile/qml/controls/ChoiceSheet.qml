pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// One of a few names.
Sheet {
    id: sheet

    required property var names
    property int current: -1

    signal chosen(int row)

    ListView {
        Layout.fillWidth: true
        Layout.fillHeight: true
        clip: true
        spacing: Theme.pad
        model: sheet.names
        delegate: TapButton {
            required property int index
            required property string modelData

            width: ListView.view.width
            text: modelData
            checked: sheet.current === index
            onClicked: {
                sheet.chosen(index);
                sheet.close();
            }
        }
    }
}
