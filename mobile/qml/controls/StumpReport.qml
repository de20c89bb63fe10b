pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// What the walk came to: pages as they will be printed, an audit by sample, and the files.
RowLayout {
    id: report

    required property StumpReportViewModel source

    signal backAsked

    spacing: Theme.gap
    layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

    ColumnLayout {
        spacing: Theme.pad

        PrintedPages {
            Layout.fillWidth: true
            Layout.fillHeight: true
            source: report.source
            above: StumpReportChoices {
                Layout.fillWidth: true
                source: report.source
            }
        }
        PagesActions {
            Layout.fillWidth: true
            Layout.bottomMargin: Theme.edge
            visible: !Theme.wide
            source: report.source
            text: qsTr("Write the report")
            help: qsTr("Writes the pages and the list beside the tract file")
            onBackAsked: report.backAsked()
            onMakeAsked: report.source.make()
        }
    }
    ColumnLayout {
        Layout.preferredWidth: Theme.columnWidth
        Layout.maximumWidth: Theme.columnWidth
        Layout.fillHeight: true
        visible: Theme.wide
        spacing: Theme.pad

        ScrollColumn {
            Layout.fillWidth: true
            Layout.fillHeight: true

            StumpReportChoices {
                Layout.fillWidth: true
                source: report.source
            }
        }
        PagesActions {
            Layout.fillWidth: true
            Layout.bottomMargin: Theme.edge
            source: report.source
            text: qsTr("Write the report")
            help: qsTr("Writes the pages and the list beside the tract file")
            onBackAsked: report.backAsked()
            onMakeAsked: report.source.make()
        }
    }
}
