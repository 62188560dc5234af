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
	CodeAlike     Code = "NM1608"
	CodeOverdrawn Code = "NM1609"
)

// cellarTable lists them in order.
var cellarTable = []Info{
	{CodeEmptied, "cask-emptied", Error, "a cask that is read, or emptied, with nothing in it"},
	{CodeUnfilled, "cask-unfilled", Note, "a cask of which no run says when it was filled"},
	{CodeReadTwice, "read-twice", Note, "a weight that is written down in two places, or two weights of a day"},
	{CodeLotCode, "lot-code", Warning, "a lot code that says another day than the bottling"},
	{CodeNoBottles, "bottles-missing", Error, "more bottles gone than were filled"},
	{CodeRack, "not-in-the-rack", Warning, "a place that no rack house has, or a tank that the plant has not"},
	{CodeTooSoon, "not-there-yet", Error, "a vat that is used before its day, or in itself; a cask so topped"},
	{CodeAlike, "serials-alike", Note, "serials that differ only in letters and digits that look the same"},
	{CodeOverdrawn, "vat-overdrawn", Error, "more in bottles than the vat held that they are of"},
}
