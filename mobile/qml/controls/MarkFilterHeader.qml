import QtQuick
import QtQuick.Layouts
import Oaklight

// The filters, above their list.
ColumnLayout {
    id: header

    readonly property TapList list: ListView.view as TapList

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
        id: filters

        readonly property MarksViewModel viewModel: header.list ? header.list.viewModel as MarksViewModel : null

        Layout.fillWidth: true
        Layout.bottomMargin: header.visible ? Theme.gap : 0
        active: header.visible && filters.viewModel !== null
        onActiveChanged: filters.fill()
        Component.onCompleted: filters.fill()

        function fill() {
            if (filters.active)
                filters.setSource("MarkFilters.qml", {
                    viewModel: filters.viewModel
                });
        }
    }
}
