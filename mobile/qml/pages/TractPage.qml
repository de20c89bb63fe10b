pragma ComponentBehavior: Bound

import QtQuick
import QtQuick.Layouts
import Oaklight

// Home: the tract on a map, what is left to do in it, and its stands.
Item {
    id: page

    required property AppModel app
    required property Workspace workspace
    readonly property TractViewModel viewModel: page.workspace.tract

    function takeStep() {
        switch (page.viewModel.step) {
        case TractViewModel.NameTract:
            facts.open();
            break;
        case TractViewModel.AddStand:
            stand.add();
            break;
        case TractViewModel.ChooseDesign:
            design.open();
            break;
        case TractViewModel.AddPlots:
            plots.add(0);
            break;
        case TractViewModel.Walk:
            page.app.page = AppModel.Walk;
            break;
        case TractViewModel.SayWalked:
            stand.askWalked(page.viewModel.unwalked());
            break;
        case TractViewModel.Decide:
            page.app.page = AppModel.Light;
            break;
        default:
            page.app.page = AppModel.Marks;
        }
    }

    Component.onCompleted: page.viewModel.show(true)
    Component.onDestruction: page.viewModel.show(false)

    ColumnLayout {
        anchors.fill: parent
        spacing: 0

        GridLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.margins: Theme.edge
            columns: Theme.wide ? 2 : 1
            columnSpacing: Theme.gap
            rowSpacing: Theme.gap
            layoutDirection: Theme.leftHand ? Qt.RightToLeft : Qt.LeftToRight

            TractMap {
                Layout.fillWidth: true
                Layout.fillHeight: true
                visible: Theme.wide
                viewModel: page.viewModel
                metric: page.app.settings.metric
            }
            TractOverview {
                Layout.fillHeight: true
                Layout.fillWidth: !Theme.wide
                Layout.preferredWidth: Theme.columnWidth
                viewModel: page.viewModel
                join: page.workspace.join
                turns: page.workspace.turns
                metric: page.app.settings.metric
                onStepAsked: page.takeStep()
                onFilesAsked: files.open()
                onJoinAsked: join.begin()
                onFactsAsked: facts.open()
                onDesignAsked: design.open()
                onStandAdded: stand.add()
                onLayoutAsked: layout.open()
                onTurnsAsked: turns.open()
                onOutlinesAsked: outline.begin("")
                onStandAsked: row => stand.change(row)
            }
        }

        ChosenPlot {
            Layout.fillWidth: true
            viewModel: page.viewModel
            onWalkAsked: {
                page.workspace.walk.chooseCurrent();
                page.app.page = AppModel.Walk;
            }
            onTallyAsked: page.app.page = AppModel.Tally
        }
    }

    FilesSheet {
        id: files

        app: page.app
        onJoinAsked: join.begin()
    }
    JoinSheet {
        id: join

        viewModel: page.workspace.join
    }
    FactsSheet {
        id: facts

        facts: page.viewModel.facts
    }
    StandSheet {
        id: stand

        viewModel: page.viewModel
        metric: page.app.settings.metric
        onPlotsAsked: row => plots.add(row)
        onOutlineAsked: name => outline.begin(name)
    }
    OutlineSheet {
        id: outline

        viewModel: page.workspace.boundary
        metric: page.app.settings.metric
    }
    LayoutSheet {
        id: layout

        viewModel: page.workspace.layout
        turns: page.workspace.turns
    }
    PlotsSheet {
        id: plots

        viewModel: page.viewModel
        turns: page.workspace.turns
    }
    TurnsSheet {
        id: turns

        turns: page.workspace.turns
    }
    DesignSheet {
        id: design

        design: page.viewModel.design
    }
}
