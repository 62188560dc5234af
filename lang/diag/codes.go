package diag

import (
	"slices"
	"strings"
)

// Code is a diagnostic's stable name, NM and four digits. The first two digits
// are the family:
//
//	01 text and syntax      06 mash            11 schedule
//	02 names                07 ferment         12 promises
//	03 quantities and units 08 still           13 records of runs
//	04 fields               09 gauge and cask  14 diff and size
//	05 plant and vessels    10 law             15 tastings and trials
//	                                           16 casks, vats and bottlings
//	                                           17 seasons, and vessels claimed twice
type Code string

// Info is what the table knows of a code.
type Info struct {
	Code     Code
	Name     string   // one or more words joined by hyphens, for `explain`
	Severity Severity // the usual one
	Title    string   // what the code is about, in a few words
}

// The codes of text, syntax, names and quantities. Each family has a const
// block and a part of the table; keep both in the order of the numbers.
const (
	CodeNotUTF8       Code = "NM0101"
	CodeUTF16         Code = "NM0102"
	CodeControl       Code = "NM0103"
	CodeBidi          Code = "NM0104"
	CodeLookAlike     Code = "NM0105"
	CodeFileTooLarge  Code = "NM0106"
	CodeLineTooLong   Code = "NM0107"
	CodeTooDeep       Code = "NM0108"
	CodeUnknownChar   Code = "NM0109"
	CodeUnclosed      Code = "NM0110"
	CodeBadEscape     Code = "NM0111"
	CodeBadNumber     Code = "NM0112"
	CodeBadRange      Code = "NM0113"
	CodeStrayUnit     Code = "NM0114"
	CodeNoStatement   Code = "NM0115"
	CodeUnclosedBlock Code = "NM0116"
	CodeExtraBrace    Code = "NM0117"
	CodeBlockLine     Code = "NM0118"
	CodeDanglingComma Code = "NM0119"
	CodeNotLaidOut    Code = "NM0120"
	CodeBadDate       Code = "NM0121"
	CodeTooLong       Code = "NM0122"
	CodeTooManySaid   Code = "NM0123"
	CodeThousands     Code = "NM0124"
	CodeConflict      Code = "NM0125"

	CodeUnknownName  Code = "NM0201"
	CodeDuplicate    Code = "NM0202"
	CodeUnknownField Code = "NM0203"
	CodeUnknownDecl  Code = "NM0204"
	CodeCycle        Code = "NM0205"
	CodeNameAlike    Code = "NM0206"
	CodeNameLength   Code = "NM0207"

	CodeUnknownUnit Code = "NM0301"
	CodeWrongKind   Code = "NM0302"
	CodeNoUnit      Code = "NM0303"
	CodeNotUnit     Code = "NM0304"
	CodeNotQuantity Code = "NM0305"
	CodePercentOf   Code = "NM0306"
	CodeOunces      Code = "NM0307"
	CodeBushels     Code = "NM0308"
)

// Table lists every code in order.
var Table = slices.SortedFunc(slices.Values(slices.Concat(textTable, checkTable, Computed, changeTable, learnedTable, tastingTable, cellarTable, seasonTable)), func(a, b Info) int {
	return strings.Compare(string(a.Code), string(b.Code))
})

// textTable lists the codes above in order, one a line.
var textTable = []Info{
	{CodeNotUTF8, "not-utf8", Error, "the text is not UTF-8"},
	{CodeUTF16, "utf16", Error, "the file is UTF-16"},
	{CodeControl, "control-character", Error, "a control character in the text"},
	{CodeBidi, "bidi-control", Error, "a character that reorders text on the screen"},
	{CodeLookAlike, "look-alike-character", Error, "a character that looks like another"},
	{CodeFileTooLarge, "file-too-large", Error, "the file is larger than 4 MiB"},
	{CodeLineTooLong, "line-too-long", Error, "a line is longer than 64 KiB"},
	{CodeTooDeep, "nested-too-deep", Error, "blocks are nested more than 100 deep"},
	{CodeUnknownChar, "unknown-character", Error, "a character that has no meaning here"},
	{CodeUnclosed, "unclosed-text", Error, "a quoted text that does not end on its line"},
	{CodeBadEscape, "unknown-escape", Error, "a backslash before a character it cannot escape"},
	{CodeBadNumber, "bad-number", Error, "a number written in a way that can be misread"},
	{CodeBadRange, "bad-range", Error, "a range that is not two numbers and one unit"},
	{CodeStrayUnit, "stray-unit", Error, "a unit with no number before it"},
	{CodeNoStatement, "no-statement", Error, "a block or a comma with nothing before it"},
	{CodeUnclosedBlock, "unclosed-block", Error, "a block that is never closed"},
	{CodeExtraBrace, "extra-brace", Error, "a closing brace that closes nothing"},
	{CodeBlockLine, "block-on-line", Error, "a block that does not follow the lines"},
	{CodeDanglingComma, "dangling-comma", Error, "a list that ends in a comma"},
	{CodeNotLaidOut, "not-laid-out", Error, "the formatter refuses a text it cannot keep whole"},
	{CodeBadDate, "no-such-date", Error, "a date or time that does not exist"},
	{CodeTooLong, "too-long", Error, "a file with more lines, words or batches than one may have"},
	{CodeTooManySaid, "and-more", Error, "more errors or warnings than are shown"},
	{CodeThousands, "point-for-thousands", Warning, "a point that may have been meant to part thousands"},
	{CodeConflict, "conflict", Error, "both sides of a merge, not yet made one"},

	{CodeUnknownName, "unknown-name", Error, "a name that nothing declares"},
	{CodeDuplicate, "duplicate-name", Error, "a name declared twice"},
	{CodeUnknownField, "unknown-field", Error, "a word that this block does not know"},
	{CodeUnknownDecl, "unknown-declaration", Error, "a declaration of an unknown sort"},
	{CodeCycle, "variant-cycle", Error, "a variant of itself"},
	{CodeNameAlike, "look-alike-name", Error, "a name with letters of two alphabets, or what is not seen"},
	{CodeNameLength, "name-length", Error, "a name that is empty, or too long for a sheet"},

	{CodeUnknownUnit, "unknown-unit", Error, "a unit that is not known"},
	{CodeWrongKind, "wrong-kind", Error, "a unit that measures something else"},
	{CodeNoUnit, "no-unit", Error, "a number that needs a unit"},
	{CodeNotUnit, "unit-not-wanted", Error, "a unit where a bare number is wanted"},
	{CodeNotQuantity, "not-a-quantity", Error, "a word where a number is wanted"},
	{CodePercentOf, "percent-of-what", Error, "a percentage that does not say of what"},
	{CodeOunces, "ounces", Error, "oz is a weight; fl oz is a volume"},
	{CodeBushels, "bushels", Error, "a trade bushel and a distiller's bushel are not the same"},
}

// Lookup finds a code in the table.
func Lookup(c Code) (Info, bool) {
	for _, i := range Table {
		if i.Code == c {
			return i, true
		}
	}
	return Info{}, false
}
