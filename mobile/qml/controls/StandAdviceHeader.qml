import QtQuick
import QtQuick.Layouts
import Oaklight

// What is advised for the stand, above its cards.
ColumnLayout {
    id: header

    readonly property TapList list: ListView.view as TapList
    readonly property LightViewModel viewModel: header.list ? header.list.viewModel as LightViewModel : null

    width: header.list ? header.list.width : 0
    visible: !Theme.wide
    spacing: 0
    onHeightChanged: later.restart()

    function keepAtTop() {
        if (header.list && !header.list.scrolled)
            header.list.positionViewAtBeginning();
    }

    // While this is made, its list must not be laid out.
    Timer {
        id: later

        interval: 0
        onTriggered: header.keepAtTop()
    }
    Loader {
        id: advice

        Layout.fillWidth: true
        Layout.leftMargin: header.visible && Theme.phone ? Theme.edge : 0
        Layout.rightMargin: header.visible && Theme.phone ? Theme.edge : 0
        Layout.topMargin: header.visible ? Theme.edge : 0
        Layout.bottomMargin: header.visible ? Theme.edge : 0
        active: header.visible && header.viewModel !== null
        onActiveChanged: advice.fill()
        Component.onCompleted: advice.fill()

        function fill() {
            if (advice.active)
                advice.setSource("StandAdvice.qml", {
                        "viewModel": header.viewModel
                    });
        }

        Connections {
            target: advice.item as StandAdvice

            function onStandAsked() {
                header.list.headerTapped();
            }

            function onWalkedAsked() {
                header.list.walkedAsked();
            }
        }
    }
}
