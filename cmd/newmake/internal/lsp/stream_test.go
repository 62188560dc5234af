package lsp

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func framed(body string) string { return fmt.Sprintf("Content-Length: %d\r\n\r\n%s", len(body), body) }

// TestMessagesThatCannotBeRead: each is answered, with no number, and what comes after it
// is read.
func TestMessagesThatCannotBeRead(t *testing.T) {
	for body, code := range map[string]string{"{": "-32700", "": "-32700", "\x00\xff": "-32700", `{"a":1} x`: "-32700", "[]": "-32600", "5": "-32600", `{"jsonrpc":"2.0","method":7}`: "-32600"} {
		var out bytes.Buffer
		in := framed(body) + framed(`{"jsonrpc":"2.0","id":1,"method":"shutdown"}`) + framed(`{"jsonrpc":"2.0","method":"exit"}`)
		Serve(strings.NewReader(in), &out, Options{})
		assert.Contains(t, out.String(), `"id":null,"error":{"code":`+code, body)
		assert.Contains(t, out.String(), `"id":1`, body)
	}
}

// TestLargestMessage: one as large as may be is read, one byte more is not, and neither
// ends the conversation.
func TestLargestMessage(t *testing.T) {
	for more, want := range []string{"", "larger than newmake reads"} {
		const begin, end = `{"text":"`, `"}`
		n := mostBody + more
		in := io.MultiReader(strings.NewReader(fmt.Sprintf("Content-Length: %d\r\n\r\n%s", n, begin)),
			io.LimitReader(letters{}, int64(n-len(begin)-len(end))), strings.NewReader(end+framed(`{"text":"next"}`)))
		var out bytes.Buffer
		s := newStream(in, &out)
		var got struct{ Text string }
		require.NoError(t, s.ReadObject(&got))
		assert.Equal(t, more == 1, got.Text == "next")
		assert.Equal(t, want != "", strings.Contains(out.String(), "larger than newmake reads"))
	}
}

type letters struct{}

func (letters) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = 'a'
	}
	return len(b), nil
}

// TestHeads: a head that says no length, or one that is none, ends the conversation, for
// nobody knows where the next message begins.
func TestHeads(t *testing.T) {
	for _, head := range []string{"\r\n", "Content-Length: x\r\n\r\n", "Content-Length: -1\r\n\r\n", strings.Repeat("a", 9000) + "\r\n\r\n", "Content-Type: a\r\n\r\n{}"} {
		var v json.RawMessage
		assert.Error(t, newStream(strings.NewReader(head), io.Discard).ReadObject(&v), head)
	}
	var v json.RawMessage
	require.NoError(t, newStream(strings.NewReader("content-type: x\r\ncontent-length:2\r\n\r\n{}"), io.Discard).ReadObject(&v))
}
