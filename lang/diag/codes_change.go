package diag

// The codes of diff, size and plan --try. They speak of what a command was asked,
// and stand in no text.
const (
	CodeChangePath  Code = "NM1401"
	CodeChangeValue Code = "NM1402"
	CodeTried       Code = "NM1403"
	CodeNoSize      Code = "NM1404"
	CodeSizeLimit   Code = "NM1405"
	CodeStaged      Code = "NM1406"
)

// changeTable lists them in order.
var changeTable = []Info{
	{CodeChangePath, "no-such-value", Error, "a change of a value that the batch does not have"},
	{CodeChangeValue, "not-a-change", Error, "a change that says no value, or one that cannot be"},
	{CodeTried, "tried", Note, "values that were changed for one run, and are not in the file"},
	{CodeNoSize, "no-size", Error, "a size or a cut that no batch of this recipe has"},
	{CodeSizeLimit, "size-limit", Error, "a size that a vessel or a limit stands in the way of"},
	{CodeStaged, "staged-not-laid-out", Error, "a staged file that could not be laid out"},
}
