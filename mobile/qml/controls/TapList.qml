import QtQuick

// A long list whose rows say which of them was tapped; a header of its own asks it for the page.
ListView {
    id: list

    property QtObject viewModel: null

    // Somebody scrolled: a header that grows must not move what is read.
    property bool scrolled: false

    signal rowTapped(int row)
    signal headerTapped
    signal walkedAsked

    clip: true
    reuseItems: true
    cacheBuffer: 0  // rows ahead of need are cancelled with a complaint when the list changes
    boundsBehavior: Flickable.StopAtBounds
    onMovementStarted: list.scrolled = true
}
