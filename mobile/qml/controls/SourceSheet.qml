import QtQuick
import Oaklight

// How figures are made, by the keys of their notes.
NoteSheet {
    id: sheet

    required property list<string> keys
    readonly property SourceNotes notes: SourceNotes {
        keys: sheet.keys
    }

    title: sheet.notes.title
    note: sheet.notes.note
}
