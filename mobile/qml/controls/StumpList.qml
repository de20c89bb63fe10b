pragma ComponentBehavior: Bound

import QtQuick
import Oaklight

// The trees of the list, or those to be left; those to look at first.
TapList {
    id: list

    signal chosen

    model: (list.viewModel as StumpsViewModel)?.trees ?? null
    onRowTapped: row => {
        (list.viewModel as StumpsViewModel).choose(row);
        list.chosen();
    }
    delegate: StumpListRow {}
}
