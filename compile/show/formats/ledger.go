package formats

import (
	"io"

	"newmake/compile/book/ledger"
	"newmake/compile/show/ledgered"
	"newmake/lang/diag"
)

var ledgerForms = []form[*ledger.Ledger, ledgered.Options]{
	{"text", ".txt", ledgered.Text},
	{"md", ".md", func(w io.Writer, l *ledger.Ledger, _ ledgered.Options) error { return ledgered.Markdown(w, l) }},
	{"json", ".json", func(w io.Writer, l *ledger.Ledger, _ ledgered.Options) error { return diag.EncodeJSON(w, "", l) }},
	{"csv", ".csv", func(w io.Writer, l *ledger.Ledger, _ ledgered.Options) error { return ledgered.CSV(w, l) }},
}

// OfLedger is the formats of a month's books.
var OfLedger = ways(ledgerForms)

// Ledger writes the books of a month in a format of OfLedger.
func Ledger(l *ledger.Ledger, format string, o ledgered.Options) ([]byte, error) {
	return written(ledgerForms, format, l, o)
}
