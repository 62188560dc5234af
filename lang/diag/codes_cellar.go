package diag

// The codes of casks, vats and bottlings.
const (
	CodeEmptied   Code = "NM1601"
	CodeUnfilled  Code = "NM1602"
	CodeReadTwice Code = "NM1603"
	CodeLotCode   Code = "NM1604"
	CodeNoBottles Code = "NM1605"
	CodeRack      Code = "NM1606"
	CodeTooSoon   Code = "NM1607"
)

// cellarTable lists them in order.
var cellarTable = []Info{
	{CodeEmptied, "cask-emptied", Error, "a cask that is read, or emptied, with nothing in it"},
	{CodeUnfilled, "cask-unfilled", Note, "a cask of which no run says when it was filled"},
	{CodeReadTwice, "read-twice", Note, "a weight that is written down in two places"},
	{CodeLotCode, "lot-code", Warning, "a lot code that says another day than the bottling"},
	{CodeNoBottles, "bottles-missing", Error, "more bottles gone than were filled"},
	{CodeRack, "not-in-the-rack", Warning, "a place that the rack house does not have"},
	{CodeTooSoon, "not-there-yet", Error, "a vat that is bottled, or used, before its day, or in itself"},
}
