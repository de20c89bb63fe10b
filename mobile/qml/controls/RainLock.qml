import QtQuick
import Oaklight

// Locks the tally against rain and sleeves. Held for a second, so that rain cannot do it.
TapButton {
    id: lock

    required property TallyViewModel viewModel

    text: lock.viewModel.locked ? qsTr("Hold to unlock") : qsTr("Hold to lock")
    tall: true
    lines: 3
    checked: lock.viewModel.locked
    Accessible.onPressAction: lock.viewModel.locked = !lock.viewModel.locked
    onPressedChanged: lock.pressed ? held.start() : held.stop()

    Timer {
        id: held

        interval: 1000
        onTriggered: lock.viewModel.locked = !lock.viewModel.locked
    }
}
