package edit

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAtEnd(t *testing.T) {
	for _, c := range []struct{ file, want string }{
		{"a {\n}\n", "a {\n}\n\nb {\n}\n"},
		{"a {\n}", "a {\n}\n\nb {\n}\n"},
		{"a {\r\n}\r\n", "a {\r\n}\r\n\r\nb {\r\n}\r\n"},
		{"a {\r\n}", "a {\r\n}\r\n\r\nb {\r\n}\r\n"},
		{"a {\r\n\n}\n", "a {\r\n\n}\n\nb {\n}\n"}, // most lines end otherwise
		{"", "\nb {\n}\n"},
	} {
		assert.Equal(t, c.want, string(AtEnd([]byte(c.file), []byte("b {\n}\n"))), "%q", c.file)
	}
}
