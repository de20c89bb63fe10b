import Oaklight

// A stand opened from another page than Tract, to say how much of it was walked.
StandSheet {
    id: sheet

    // The list of stands follows the records only while somebody looks at it.
    function ask(row: int) {
        sheet.viewModel.show(true);
        sheet.askWalked(row);
    }

    plotsToo: false
    onClosed: sheet.viewModel.show(false)
}
