package lsp

import (
	"context"
	"encoding/json"
	"io"
	"log"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/require"
)

// editor is the other end of the conversation, over pipes of the system.
type editor struct {
	t       testing.TB
	conn    *jsonrpc2.Conn
	in      *os.File // what the server reads, this end
	code    chan int
	said    chan publishParams
	told    chan string // requests of the server
	version int
}

// start starts a server and an editor that has said nothing yet.
func start(t testing.TB, o Options) *editor {
	t.Helper()
	fromEditor, toServer, err := os.Pipe()
	require.NoError(t, err)
	fromServer, toEditor, err := os.Pipe()
	require.NoError(t, err)
	e := &editor{t: t, in: toServer, code: make(chan int, 1), said: make(chan publishParams, 10_000), told: make(chan string, 10_000)}
	o.Fault = func(what any) { t.Errorf("a fault: %v", what) }
	go func() {
		e.code <- Serve(fromEditor, toEditor, o)
		toEditor.Close()
	}()
	stream := jsonrpc2.NewBufferedStream(ends{fromServer, toServer}, jsonrpc2.VSCodeObjectCodec{})
	e.conn = jsonrpc2.NewConn(context.Background(), stream, jsonrpc2.HandlerWithError(e.handle), jsonrpc2.SetLogger(log.New(io.Discard, "", 0)))
	t.Cleanup(func() { e.conn.Close() })
	return e
}

type ends struct {
	io.Reader
	io.WriteCloser
}

func (e *editor) handle(_ context.Context, _ *jsonrpc2.Conn, r *jsonrpc2.Request) (any, error) {
	if r.Method != "textDocument/publishDiagnostics" {
		e.told <- r.Method
		return nil, nil
	}
	var p publishParams
	if err := json.Unmarshal(*r.Params, &p); err != nil {
		return nil, err
	}
	e.said <- p
	return nil, nil
}

// ask sends a request and gives its answer as it came.
func (e *editor) ask(method string, params any) (json.RawMessage, error) {
	e.t.Helper()
	ctx, stop := context.WithTimeout(context.Background(), time.Minute)
	defer stop()
	var answer json.RawMessage
	err := e.conn.Call(ctx, method, params, &answer)
	return answer, err
}

// get asks for what must be given.
func get[T any](e *editor, method string, params any) T {
	e.t.Helper()
	raw, err := e.ask(method, params)
	require.NoError(e.t, err, method)
	var out T
	require.NoError(e.t, json.Unmarshal(raw, &out))
	return out
}

func (e *editor) notify(method string, params any) {
	e.t.Helper()
	require.NoError(e.t, e.conn.Notify(context.Background(), method, params))
}

type object = map[string]any

// opened starts a server and shakes hands.
func opened(t testing.TB, capabilities object) *editor {
	t.Helper()
	e := start(t, Options{})
	get[object](e, "initialize", object{"processId": nil, "rootUri": nil, "capabilities": capabilities})
	e.notify("initialized", object{})
	return e
}

func (e *editor) open(uri, text string) {
	e.version++
	e.notify("textDocument/didOpen", object{"textDocument": object{"uri": uri, "languageId": "newmake", "version": e.version, "text": text}})
}

func (e *editor) change(uri, text string) int {
	e.version++
	e.notify("textDocument/didChange", object{"textDocument": object{"uri": uri, "version": e.version}, "contentChanges": []object{{"text": text}}})
	return e.version
}

// until waits for what is published of a file that is as is wanted.
func (e *editor) until(uri string, wanted func(publishParams) bool) publishParams {
	e.t.Helper()
	for {
		select {
		case p := <-e.said:
			if p.URI == uri && wanted(p) {
				return p
			}
		case <-time.After(20 * time.Second):
			require.FailNow(e.t, "nothing of the sort was published of "+uri)
		}
	}
}

func says(code string) func(publishParams) bool {
	return func(p publishParams) bool {
		for _, d := range p.Diagnostics {
			if d.Code == code {
				return true
			}
		}
		return false
	}
}

func silent(p publishParams) bool { return len(p.Diagnostics) == 0 }

// houseAt copies the example house.
func houseAt(t testing.TB, folder string) (root string) {
	t.Helper()
	root = filepath.Join(t.TempDir(), folder)
	require.NoError(t, os.CopyFS(root, os.DirFS("../../../../examples/lantern-hollow")))
	return root
}

func textOf(t testing.TB, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(text)
}

func at(uri string, line, character int) object {
	return object{"textDocument": object{"uri": uri}, "position": position{line, character}}
}
