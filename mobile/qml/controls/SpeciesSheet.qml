pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// All species, found by the beginning of any of their names.
Sheet {
    id: sheet

    required property SpeciesSearchViewModel viewModel

    signal chosen(int row)

    title: qsTr("Species")
    atTree: true
    onOpened: {
        sheet.viewModel.text = "";
        search.forceActiveFocus();
    }

    TextLine {
        id: search

        Layout.fillWidth: true
        placeholderText: qsTr("Any name: chinkapin, tulip, Quercus")
        Accessible.name: qsTr("Search for a species")
        text: sheet.viewModel.text
        onTextEdited: sheet.viewModel.text = search.text
    }
    ListView {
        Layout.fillWidth: true
        Layout.fillHeight: true
        clip: true
        reuseItems: true
        cacheBuffer: 0  // rows ahead of need are cancelled with a complaint when the list changes
        model: sheet.viewModel.found
        delegate: TapButton {
            required property int index
            required property string name
            required property string otherNames

            width: ListView.view.width
            text: name
            subtext: otherNames
            onClicked: {
                sheet.chosen(index);
                sheet.close();
            }
        }
    }
    Words {
        Layout.fillWidth: true
        visible: sheet.viewModel.found.count === 0
        text: qsTr("No species has a name that begins so. Fewer letters find more.")
    }
}
