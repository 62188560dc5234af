// Package lsp speaks the Language Server Protocol with an editor: `newmake lsp`. It
// is thin: what is said of a text comes from package front, and what is known of a
// place in it from package assist; here it is put into messages.
//
// Messages are handled one after another, in the order in which they come. What takes
// long, computing batches, is done beside them from a snapshot, and what has become
// stale by then is dropped.
package lsp

import (
	"context"
	"encoding/json"
	"io"
	"log"
	"os"
	"slices"
	"sync"
	"time"

	"github.com/sourcegraph/jsonrpc2"
)

// The protocol's own error codes.
const (
	notInitialized  = -32002
	cancelled       = -32800
	contentModified = -32801
)

// Options of Serve.
type Options struct {
	Version     string        // of the program
	NoLearned   bool          // leave out what houses have learned from their runs
	ParentEvery time.Duration // how often it is looked whether the editor still runs; 0 is 3 s
	Fault       func(any)     // is told of a panic, which answers its request with an error
}

// server is one conversation with an editor.
type server struct {
	Options
	conn *jsonrpc2.Conn
	done chan struct{}

	mu          sync.Mutex // of all below
	initialized bool
	shut        bool
	exited      bool
	units       units
	snippets    bool
	refresh     bool   // the editor asks for hints again when it is told to
	lenses      bool   // and for lenses
	pulls       bool   // it fetches what is said of the files it holds
	shows       bool   // it opens a file when it is asked to
	results     bool   // it shows itself what commands give
	scratch     string // a folder for files that are shown, "" until there is one
	watch       bool   // it tells of files that change on the disk, when asked to
	docs        map[string]*doc
	houses      map[string]*home
	waiting     map[jsonrpc2.ID]context.CancelFunc
	computing   chan struct{} // one at a time
}

// Serve speaks with an editor until it says `exit`, closes the pipe, or ends. The exit
// code is 0 after a `shutdown`, and 1 without one, as the protocol has it.
func Serve(in io.Reader, out io.Writer, o Options) int {
	s := &server{
		Options: o, done: make(chan struct{}), docs: map[string]*doc{}, houses: map[string]*home{},
		waiting: map[jsonrpc2.ID]context.CancelFunc{}, computing: make(chan struct{}, 1),
	}
	if s.ParentEvery == 0 {
		s.ParentEvery = 3 * time.Second
	}
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	stream := newStream(in, out)
	ready := make(chan struct{})
	s.conn = jsonrpc2.NewConn(ctx, stream, after{ready, s}, jsonrpc2.SetLogger(log.New(io.Discard, "", 0)))
	close(ready)
	select {
	case <-s.done:
	case <-s.conn.DisconnectNotify():
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.scratch != "" {
		_ = os.RemoveAll(s.scratch)
	}
	if s.shut {
		return 0
	}
	return 1
}

// after holds messages back until the server knows its connection.
type after struct {
	ready chan struct{}
	to    jsonrpc2.Handler
}

func (a after) Handle(ctx context.Context, c *jsonrpc2.Conn, r *jsonrpc2.Request) {
	<-a.ready
	a.to.Handle(ctx, c, r)
}

// pipe is standard input and output as one. Closing it leaves them to the process.
type pipe struct {
	io.Reader
	io.Writer
}

func (pipe) Close() error { return nil }

// end ends the conversation. It is called with the lock held.
func (s *server) end() {
	if !s.exited {
		s.exited = true
		close(s.done)
	}
}

// Handle handles one message.
func (s *server) Handle(ctx context.Context, _ *jsonrpc2.Conn, r *jsonrpc2.Request) {
	s.mu.Lock()
	defer s.mu.Unlock()
	defer func() {
		if what := recover(); what != nil {
			if s.Fault != nil {
				s.Fault(what)
			}
			s.refuse(ctx, r, jsonrpc2.CodeInternalError, "this is a fault in newmake, not in your text")
		}
	}()
	switch {
	case s.exited:
	case r.Method == "exit":
		s.end()
	case s.shut:
		s.refuse(ctx, r, jsonrpc2.CodeInvalidRequest, "after `shutdown` there is only `exit`")
	case r.Method == "initialize" && s.initialized:
		s.refuse(ctx, r, jsonrpc2.CodeInvalidRequest, "`initialize` comes once")
	case r.Method != "initialize" && !s.initialized:
		s.refuse(ctx, r, notInitialized, "the first request is `initialize`")
	case r.Notif:
		if do := notifications[r.Method]; do != nil {
			do(s, params(r))
		}
	case slow[r.Method] != nil:
		s.later(ctx, r)
	default:
		answer := requests[r.Method]
		if answer == nil {
			s.refuse(ctx, r, jsonrpc2.CodeMethodNotFound, "newmake does not know "+r.Method)
			return
		}
		result, err := answer(s, params(r))
		if err != nil {
			s.refuse(ctx, r, jsonrpc2.CodeInvalidParams, err.Error())
			return
		}
		_ = s.conn.Reply(ctx, r.ID, result)
	}
}

// refuse answers a request with an error; a notification has no answer.
func (s *server) refuse(ctx context.Context, r *jsonrpc2.Request, code int64, message string) {
	if !r.Notif {
		_ = s.conn.ReplyWithError(ctx, r.ID, &jsonrpc2.Error{Code: code, Message: message})
	}
}

func params(r *jsonrpc2.Request) json.RawMessage {
	if r.Params == nil {
		return json.RawMessage("{}")
	}
	return *r.Params
}

// The messages that are understood. What is no file of a house has no answers.
var (
	requests      map[string]func(*server, json.RawMessage) (any, error)
	notifications map[string]func(*server, json.RawMessage)
	// slow requests compute. They are begun with the lock held, and give what is done
	// without it.
	slow map[string]func(*server, json.RawMessage) (func() any, *home, error)
)

func init() {
	requests = map[string]func(*server, json.RawMessage) (any, error){
		"initialize":                       (*server).initialize,
		"shutdown":                         (*server).shutdown,
		"textDocument/formatting":          (*server).formatting,
		"textDocument/hover":               (*server).hover,
		"textDocument/completion":          (*server).completion,
		"textDocument/definition":          (*server).definition,
		"textDocument/references":          (*server).references,
		"textDocument/documentSymbol":      (*server).symbols,
		"textDocument/foldingRange":        (*server).folds,
		"textDocument/codeAction":          (*server).actions,
		"textDocument/prepareRename":       (*server).prepareRename,
		"textDocument/rename":              (*server).rename,
		"textDocument/signatureHelp":       (*server).signature,
		"textDocument/documentLink":        (*server).links,
		"textDocument/diagnostic":          (*server).pull,
		"textDocument/semanticTokens/full": (*server).paints,
	}
	notifications = map[string]func(*server, json.RawMessage){
		"initialized":                     (*server).register,
		"$/cancelRequest":                 (*server).cancel,
		"textDocument/didOpen":            (*server).didOpen,
		"textDocument/didChange":          (*server).didChange,
		"textDocument/didSave":            (*server).didSave,
		"textDocument/didClose":           (*server).didClose,
		"workspace/didChangeWatchedFiles": (*server).didChangeWatched,
	}
	slow = map[string]func(*server, json.RawMessage) (func() any, *home, error){
		"textDocument/inlayHint":   (*server).hints,
		"textDocument/codeLens":    (*server).codeLenses,
		"workspace/executeCommand": (*server).execute,
	}
}

func (s *server) initialize(raw json.RawMessage) (any, error) {
	var p initializeParams
	if err := json.Unmarshal(raw, &p); err != nil {
		return nil, err
	}
	s.initialized = true
	encoding := "utf-16"
	if slices.Contains(p.Capabilities.General.PositionEncodings, "utf-8") {
		encoding, s.units.utf8 = "utf-8", true
	}
	s.snippets = p.Capabilities.TextDocument.Completion.CompletionItem.SnippetSupport
	s.refresh = p.Capabilities.Workspace.InlayHint.RefreshSupport
	s.lenses = p.Capabilities.Workspace.CodeLens.RefreshSupport
	// What computing shows comes later: an editor that cannot be told to fetch again is
	// told of everything.
	s.pulls = p.Capabilities.TextDocument.Diagnostic != nil && p.Capabilities.Workspace.Diagnostics.RefreshSupport
	s.shows = p.Capabilities.Window.ShowDocument.Support
	s.results = p.InitializationOptions.Results
	s.watch = p.Capabilities.Workspace.DidChangeWatchedFiles.DynamicRegistration
	if p.ProcessID != nil && *p.ProcessID > 0 {
		go watchParent(*p.ProcessID, s.ParentEvery, s.done, func() {
			s.mu.Lock()
			defer s.mu.Unlock()
			s.end()
		})
	}
	type object = map[string]any
	can := object{
		"positionEncoding":           encoding,
		"textDocumentSync":           object{"openClose": true, "change": 1, "save": object{}},
		"documentFormattingProvider": true,
		"hoverProvider":              true,
		"completionProvider":         object{"triggerCharacters": []string{" ", "\""}},
		"definitionProvider":         true,
		"referencesProvider":         true,
		"documentSymbolProvider":     true,
		"foldingRangeProvider":       true,
		"codeActionProvider":         object{"codeActionKinds": []string{"quickfix"}},
		"inlayHintProvider":          true,
		"renameProvider":             object{"prepareProvider": true},
		"signatureHelpProvider":      object{"triggerCharacters": []string{" "}},
		"documentLinkProvider":       object{},
		"codeLensProvider":           object{},
		"executeCommandProvider":     object{"commands": commandNames()},
		"semanticTokensProvider":     object{"legend": object{"tokenTypes": tokenTypes, "tokenModifiers": []string{"declaration"}}, "full": true},
	}
	if s.pulls {
		can["diagnosticProvider"] = object{"identifier": "newmake", "interFileDependencies": true, "workspaceDiagnostics": false}
	}
	return object{"serverInfo": object{"name": "newmake", "version": s.Version}, "capabilities": can}, nil
}

func (s *server) shutdown(json.RawMessage) (any, error) {
	s.shut = true
	for _, stop := range s.waiting {
		stop()
	}
	return nil, nil
}

// register asks an editor that can to tell when a file of a house changes on the disk.
func (s *server) register(json.RawMessage) {
	if !s.watch {
		return
	}
	type object = map[string]any
	_, _ = s.conn.DispatchCall(context.Background(), "client/registerCapability", object{"registrations": []object{{
		"id": "files", "method": "workspace/didChangeWatchedFiles",
		"registerOptions": object{"watchers": []object{{"globPattern": "**/*.batch"}}},
	}}})
}

// fault stands for the answer of what panicked.
type fault struct{}

// later answers a request beside those that follow it.
func (s *server) later(ctx context.Context, r *jsonrpc2.Request) {
	work, h, err := slow[r.Method](s, params(r))
	if err != nil {
		s.refuse(ctx, r, jsonrpc2.CodeInvalidParams, err.Error())
		return
	}
	if h == nil { // of no house: nothing can become stale
		h = &home{}
	}
	ctx, stop := context.WithCancel(ctx)
	s.waiting[r.ID] = stop
	turn := h.turn
	go func() {
		defer stop()
		answered := make(chan any, 1)
		go func() {
			var result any = fault{} // until it is done
			defer func() { answered <- result }()
			defer s.recovered()
			s.computing <- struct{}{}
			defer func() { <-s.computing }()
			if ctx.Err() != nil || !s.current(h, turn) {
				result = nil
				return
			}
			result = work()
		}()
		var result any
		select {
		case result = <-answered:
		case <-ctx.Done():
		}
		s.mu.Lock()
		defer s.mu.Unlock()
		delete(s.waiting, r.ID)
		switch {
		case ctx.Err() != nil:
			s.refuse(context.Background(), r, cancelled, "cancelled")
		case h.turn != turn:
			s.refuse(ctx, r, contentModified, "the text has changed")
		case result == fault{}:
			s.refuse(ctx, r, jsonrpc2.CodeInternalError, "this is a fault in newmake, not in your text")
		default:
			_ = s.conn.Reply(ctx, r.ID, result)
		}
	}()
}

// recovered keeps a fault beside the conversation from ending it.
func (s *server) recovered() {
	if what := recover(); what != nil && s.Fault != nil {
		s.Fault(what)
	}
}

// current reports whether a house has not changed since a turn.
func (s *server) current(h *home, turn int) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return h.turn == turn && !s.exited
}

func (s *server) cancel(raw json.RawMessage) {
	var p cancelParams
	var id jsonrpc2.ID
	if json.Unmarshal(raw, &p) != nil || json.Unmarshal(p.ID, &id) != nil {
		return
	}
	if stop := s.waiting[id]; stop != nil {
		stop()
	}
}
