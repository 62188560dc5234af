package diag

// The codes of tastings and trials.
const (
	CodeScore Code = "NM1501"
	CodeTrial Code = "NM1502"
	CodeAroma Code = "NM1503"
)

// tastingTable lists them in order.
var tastingTable = []Info{
	{CodeScore, "score", Error, "a score that is not on its scale, or a look that says nothing"},
	{CodeTrial, "trial-shape", Error, "a trial that cannot be judged so, or answers beyond its sets"},
	{CodeAroma, "aroma-word", Note, "a word of a tasting that is nearly one of the vocabulary"},
}
