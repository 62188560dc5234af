package composed

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestForm(t *testing.T) {
	for text, want := range map[string]string{
		"Ferry Landing": "Ferry Landing", "": "",
		"e\u0301": "\u00e9", "\u00e9": "\u00e9", // UAX 15, figure 3
		"\u212b":         "\u00c5",        // UAX 15, figure 4: the sign for angstrom
		"q\u0307\u0323":  "q\u0323\u0307", // UAX 15, figure 5: marks in their order
		"\ufb01":         "\ufb01",        // UAX 15, figure 6: a ligature stays one
		"caf\u00e9 \xff": "caf\u00e9 \xff",
	} {
		assert.Equal(t, want, Form(text), "%+q", text)
	}
}
