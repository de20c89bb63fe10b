pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// What the tract is called, and what an ambulance needs to find it.
Sheet {
    id: sheet

    required property TractFactsModel facts

    title: qsTr("About this tract")
    onAboutToShow: sheet.facts.begin()

    Connections {
        target: sheet.facts

        function onSaved() {
            sheet.close();
        }
    }

    ProblemWords {
        Layout.fillWidth: true
        problem: sheet.facts.problem
    }
    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true

        Repeater {
            model: sheet.facts

            LabelledLine {
                required property int index
                required property string value
                required label
                required help

                Layout.fillWidth: true
                text: value
                onEdited: text => sheet.facts.type(index, text)
                onEntered: sheet.facts.save()
            }
        }
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Save")
        main: true
        large: true
        onClicked: sheet.facts.save()
    }
}
