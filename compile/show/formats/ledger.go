package formats

import (
	"bytes"

	"newmake/compile/book/ledger"
	"newmake/compile/show/ledgered"
	"newmake/lang/diag"
)

// Ledger writes the books of a month in a format of OfLedger.
func Ledger(l *ledger.Ledger, format string, o ledgered.Options) ([]byte, error) {
	var out bytes.Buffer
	var err error
	switch format {
	case "json":
		err = diag.EncodeJSON(&out, "", l)
	case "csv":
		err = ledgered.CSV(&out, l)
	case "md":
		err = ledgered.Markdown(&out, l)
	default:
		err = ledgered.Text(&out, l, o)
	}
	return out.Bytes(), err
}
