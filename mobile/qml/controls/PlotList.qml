pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Templates as T
import Oaklight

// All plots by stand and label, each with its status as a shape and a word.
ListView {
    id: list

    required property WalkViewModel viewModel

    signal picked

    clip: true
    reuseItems: true
    boundsBehavior: Flickable.StopAtBounds
    model: list.viewModel.plots

    T.ScrollBar.vertical: T.ScrollBar {
        implicitWidth: Theme.strong
        visible: size < 1

        contentItem: Rectangle {
            color: Theme.soft
            radius: Theme.corner
        }
    }

    delegate: ListRow {
        required property int index
        required property string name
        required property bool chosen
        required status
        required mark
        required detail

        width: ListView.view.width
        text: name
        checked: chosen
        onClicked: {
            list.viewModel.choose(index);
            list.picked();
        }
    }
}
