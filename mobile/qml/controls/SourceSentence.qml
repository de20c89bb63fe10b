import QtQuick
import Oaklight

// A sentence with figures; a tap tells how they were computed and by which sources.
SentenceButton {
    id: sentence

    // Of the notes, in the order in which they are told.
    required property list<string> keys

    help: qsTr("Tells how it was computed and by which source")
    onClicked: {
        if (!sheet.item)
            sheet.setSource("SourceSheet.qml", {
                    "keys": sentence.keys
                });
        (sheet.item as SourceSheet).open();
    }

    // Made when it is first asked for: a list may hold many sentences.
    Loader {
        id: sheet
    }
}
