import QtQuick
import Oaklight

// Which points of a cruise are measured; the others are only counted.
Choices {
    id: choices

    required property TurnsViewModel turns

    visible: choices.turns.asked
    label: qsTr("Which points are measured")
    columns: Theme.phone ? 2 : 3
    options: choices.turns.options
    chosen: choices.turns.chosen
    help: qsTr("At the others trees are counted by species, without sizes. In each stand the first point is measured.")
    onPicked: row => choices.turns.chosen = row
}
