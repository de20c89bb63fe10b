import QtQuick
import QtQuick.Layouts
import Oaklight

// Which of the points still to do are measured, and which are only counted.
Sheet {
    id: sheet

    required property TurnsViewModel turns

    title: qsTr("Count and measure points")
    onOpened: sheet.turns.begin()

    Connections {
        target: sheet.turns

        function onKept() {
            sheet.close();
        }
    }

    ProblemWords {
        Layout.fillWidth: true
        problem: sheet.turns.problem
    }
    ScrollColumn {
        Layout.fillWidth: true
        Layout.fillHeight: true

        Words {
            Layout.fillWidth: true
            text: sheet.turns.now
            font.pixelSize: Theme.large
            font.bold: true
        }
        TurnChoices {
            Layout.fillWidth: true
            turns: sheet.turns
        }
        Words {
            Layout.fillWidth: true
            text: qsTr("Points that were visited stay as they are.")
        }
    }
    TapButton {
        Layout.fillWidth: true
        text: qsTr("Give the points to do these turns")
        main: true
        large: true
        onClicked: sheet.turns.keep()
    }
}
