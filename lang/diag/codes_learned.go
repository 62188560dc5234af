package diag

// The codes of what a house has learned from its runs, when a batch is to use it.
const (
	CodeLearned      Code = "NM1350"
	CodeLearnedStale Code = "NM1351"
)

// learnedTable lists them in order.
var learnedTable = []Info{
	{CodeLearned, "learned", Note, "constants that a plan has from the house's runs"},
	{CodeLearnedStale, "learned-stale", Warning, "what was learned, and is no longer about what stands there"},
}
