package show

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"unicode"

	"newmake/compile/plan"
)

// JSON writes the plan as one document with one final newline.
func JSON(w io.Writer, p *plan.Plan) error {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	if err := e.Encode(p); err != nil {
		return err
	}
	_, err := w.Write(escapeControls(b.Bytes()))
	return err
}

// escapeControls writes as \uXXXX the characters that JSON lets stand and a
// terminal or an editor would obey: delete, the C1 controls, and those that
// reorder text. They stand in strings alone.
func escapeControls(text []byte) []byte {
	if bytes.IndexFunc(text, obeyed) < 0 {
		return text
	}
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

func obeyed(r rune) bool {
	return r >= 0x7f && r < 0xa0 || unicode.Is(unicode.Bidi_Control, r)
}
