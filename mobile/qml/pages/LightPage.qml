import QtQuick
import Oaklight

// Crop tree cards: stand at the oak, touch the four sides, name the neighbours; what goes is told at once.
Item {
    id: page

    required property AppModel app
    required property Workspace workspace
    readonly property LightViewModel viewModel: page.workspace.light

    Component.onCompleted: page.viewModel.setShown(true)
    Component.onDestruction: page.viewModel.setShown(false)

    CardList {
        anchors.fill: parent
        visible: !page.viewModel.card.open
        viewModel: page.viewModel
        onStandAsked: stands.open()
        onWalkedAsked: walked.ask(page.viewModel.unwalked)
        onCropTreeAsked: {
            page.viewModel.newCropTree();
            tree.open();
        }
    }
    OpenCard {
        anchors.fill: parent
        visible: page.viewModel.card.open
        viewModel: page.viewModel
        metric: page.app.settings.metric
        onSideTapped: side => {
            sideSheet.side = side;
            sideSheet.open();
        }
        onTreeTapped: row => decision.show(row)
    }

    ChoiceSheet {
        id: stands

        title: qsTr("Stands")
        names: page.viewModel.stands
        current: page.viewModel.stand
        onChosen: row => page.viewModel.stand = row
    }
    WalkedSheet {
        id: walked

        viewModel: page.workspace.tract
        metric: page.app.settings.metric
    }
    SideSheet {
        id: sideSheet

        card: page.viewModel.card
        onNeighbourAsked: {
            page.viewModel.newNeighbour(sideSheet.side);
            tree.open();
        }
    }
    DecisionSheet {
        id: decision

        card: page.viewModel.card
        onLookAsked: {
            page.viewModel.lookAgain(decision.row);
            tree.open();
        }
    }
    WalkTreeSheet {
        id: tree

        tree: page.viewModel.tree
    }
}
