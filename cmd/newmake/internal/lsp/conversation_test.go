package lsp

import (
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func code(t *testing.T, err error) int64 {
	t.Helper()
	var e *jsonrpc2.Error
	require.True(t, errors.As(err, &e), "%v", err)
	return e.Code
}

func TestOrderOfTheConversation(t *testing.T) {
	e := start(t, Options{})
	_, err := e.ask("textDocument/hover", at("file:///a.batch", 0, 0))
	assert.EqualValues(t, -32002, code(t, err), "before initialize")
	e.notify("textDocument/didOpen", object{}) // before initialize: not answered, not heard
	get[object](e, "initialize", object{"processId": nil, "rootUri": nil, "capabilities": object{}})
	_, err = e.ask("initialize", object{"capabilities": object{}})
	assert.EqualValues(t, -32600, code(t, err), "initialize twice")
	_, err = e.ask("newmake/brew", object{})
	assert.EqualValues(t, -32601, code(t, err), "an unknown request")
	e.notify("newmake/brew", object{})
	e.notify("$/setTrace", object{"value": "off"})
	e.notify("$/cancelRequest", object{"id": 4711})
	e.notify("$/cancelRequest", object{"id": "of text"})
	_, err = e.ask("textDocument/hover", json.RawMessage(`{"position": "nowhere"}`))
	assert.EqualValues(t, -32602, code(t, err), "parameters of another shape")
	answer, err := e.ask("shutdown", nil)
	require.NoError(t, err)
	assert.Equal(t, "null", string(answer))
	_, err = e.ask("textDocument/hover", at("file:///a.batch", 0, 0))
	assert.EqualValues(t, -32600, code(t, err), "after shutdown")
	e.notify("exit", nil)
	assert.Equal(t, 0, <-e.code)
}

func TestExitWithoutShutdown(t *testing.T) {
	e := opened(t, object{})
	e.notify("exit", nil)
	assert.Equal(t, 1, <-e.code)
}

func TestExitBeforeInitialize(t *testing.T) {
	e := start(t, Options{})
	e.notify("exit", nil)
	assert.Equal(t, 1, <-e.code)
}

func TestPipeCloses(t *testing.T) {
	e := opened(t, object{})
	e.in.Close()
	assert.Equal(t, 1, <-e.code)
}

// TestParentDies: the pipe stays open, and the server ends all the same.
func TestParentDies(t *testing.T) {
	if os.Getenv("NEWMAKE_TEST_WAITS") != "" {
		time.Sleep(time.Minute)
		return
	}
	parent := exec.Command(os.Args[0], "-test.run=^TestParentDies$")
	parent.Env = append(os.Environ(), "NEWMAKE_TEST_WAITS=1")
	require.NoError(t, parent.Start())
	e := start(t, Options{ParentEvery: 5 * time.Millisecond})
	get[object](e, "initialize", object{"processId": parent.Process.Pid, "capabilities": object{}})
	_, err := e.ask("textDocument/hover", at("file:///a.batch", 0, 0))
	require.NoError(t, err, "it speaks while its parent is there")
	require.NoError(t, parent.Process.Kill())
	_ = parent.Wait()
	select {
	case code := <-e.code:
		assert.Equal(t, 1, code)
	case <-time.After(time.Minute):
		t.Fatal("it outlives its parent")
	}
}

// TestEncoding: columns are of UTF-16 unless the editor offers UTF-8. 𝛼 has one rune,
// two units of UTF-16 and four bytes.
func TestEncoding(t *testing.T) {
	for _, c := range []struct {
		offers []string
		want   string
		column int
	}{
		{nil, "utf-16", 13},
		{[]string{"utf-16"}, "utf-16", 13},
		{[]string{"utf-32", "utf-8", "utf-16"}, "utf-8", 15},
	} {
		e := start(t, Options{})
		got := get[struct {
			Capabilities struct {
				PositionEncoding string `json:"positionEncoding"`
			} `json:"capabilities"`
		}](e, "initialize", object{"capabilities": object{"general": object{"positionEncodings": c.offers}}})
		assert.Equal(t, c.want, got.Capabilities.PositionEncoding)
		root := houseAt(t, "house")
		uri := uriOf(filepath.Join(root, "new.batch"))
		e.open(uri, "# 𝛼\nbatch \"𝛼\" { wrongg 1 }\n")
		p := e.until(uri, func(p publishParams) bool { return len(p.Diagnostics) > 0 })
		found := false
		for _, d := range p.Diagnostics {
			found = found || d.Range.Start == position{1, c.column}
		}
		assert.True(t, found, "%s: %v", c.want, p.Diagnostics)
	}
}

// TestNames: what is percent-encoded in a name is read, and what is published of a text
// has the very URI that the editor gave it.
func TestNames(t *testing.T) {
	root := houseAt(t, "50 % rye, größe #1")
	path := filepath.Join(root, "ferry-landing.batch")
	for _, uri := range []string{uriOf(path), "file://" + strings.NewReplacer("%", "%25", " ", "%20", "#", "%23", "ö", "%c3%b6", "ß", "%C3%9F", ",", "%2C").Replace(path)} {
		e := opened(t, object{})
		e.open(uri, strings.Replace(textOf(t, path), "add      corn", "add      korn", 1))
		p := e.until(uri, says("NM0201"))
		require.NotNil(t, p.Version)
		assert.Equal(t, 1, *p.Version)
	}
}

func TestTextsThatAreNoFile(t *testing.T) {
	e := opened(t, object{})
	e.open("untitled:Untitled-1", "batch   \"x\" {\n}\n")
	edits := get[[]textEdit](e, "textDocument/formatting", object{"textDocument": object{"uri": "untitled:Untitled-1"}})
	require.Len(t, edits, 1)
	assert.Equal(t, "batch \"x\" {\n}\n", edits[0].NewText)
	answer, err := e.ask("textDocument/hover", at("untitled:Untitled-1", 0, 0))
	require.NoError(t, err)
	assert.Equal(t, "null", string(answer))
	e.notify("textDocument/didClose", object{"textDocument": object{"uri": "untitled:Untitled-1"}})
	_, err = e.ask("shutdown", nil)
	require.NoError(t, err)
	assert.Empty(t, e.said, "nothing is published of it")
}

// TestCRLF: a line ends before its CR, and a laid out text keeps its endings.
func TestCRLF(t *testing.T) {
	root := houseAt(t, "house")
	path := filepath.Join(root, "ferry-landing.batch")
	uri := uriOf(path)
	text := strings.ReplaceAll(strings.Replace(textOf(t, path), "rest     45 min", "rest     45", 1), "\n", "\r\n")
	e := opened(t, object{})
	e.open(uri, text)
	p := e.until(uri, says("NM0303"))
	for _, d := range p.Diagnostics {
		if d.Code == "NM0303" {
			line := strings.Split(text, "\r\n")[d.Range.Start.Line]
			assert.Equal(t, "rest     45", strings.TrimSpace(line))
			assert.Equal(t, d.Range.Start.Line, d.Range.End.Line)
			assert.LessOrEqual(t, d.Range.End.Character, len(line))
		}
	}
	e.change(uri, strings.ReplaceAll(strings.Replace(textOf(t, path), "rest     45 min", "rest 45 min", 1), "\n", "\r\n"))
	edits := get[[]textEdit](e, "textDocument/formatting", object{"textDocument": object{"uri": uri}, "options": object{"tabSize": 8}})
	require.Len(t, edits, 1)
	assert.Equal(t, strings.ReplaceAll(textOf(t, path), "\n", "\r\n"), edits[0].NewText)
}
