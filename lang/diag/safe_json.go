package diag

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
)

// EncodeJSON writes one document with one final newline, each line after the first
// behind a prefix. What a terminal or an editor would obey, and JSON lets stand,
// is written as \uXXXX, so that the document says the same: delete, the C1
// controls, and what reorders text.
func EncodeJSON(w io.Writer, prefix string, document any) error {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetIndent(prefix, "  ")
	e.SetEscapeHTML(false)
	if err := e.Encode(document); err != nil {
		return err
	}
	text := b.Bytes()
	if bytes.IndexFunc(text, obeyed) >= 0 {
		text = escaped(text)
	}
	_, err := w.Write(text)
	return err
}

// escaped writes what is obeyed by its number. It stands in strings alone.
func escaped(text []byte) []byte {
	var b bytes.Buffer
	for _, r := range string(text) {
		if obeyed(r) {
			fmt.Fprintf(&b, `\u%04x`, r)
		} else {
			b.WriteRune(r)
		}
	}
	return b.Bytes()
}

func obeyed(r rune) bool { return r >= 0x7f && r < 0xa0 || isReordering(r) }
