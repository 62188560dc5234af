package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"net"
	"net/http"
	"os/exec"
	"runtime"
	"sync"
	"time"

	"newmake/compile/plan"
	"newmake/compile/show/sheet"
)

// page is the sheet as it is served: the last good plan, and what is wrong with
// the text since.
type page struct {
	mu      sync.Mutex
	plan    *plan.Plan
	trouble string
	html    []byte
	version string
	changed chan struct{} // closed when there is another version
}

func newPage() *page { return &page{changed: make(chan struct{})} }

func (p *page) show(good *plan.Plan) { p.set(func() { p.plan, p.trouble = good, "" }) }

func (p *page) problems(text string) { p.set(func() { p.trouble = text }) }

func (p *page) set(change func()) {
	p.mu.Lock()
	defer p.mu.Unlock()
	change()
	p.version = ""
	sum := sha256.Sum256(p.make()) // the same content is the same version, also after a restart
	p.version = hex.EncodeToString(sum[:8])
	p.html = p.make()
	close(p.changed)
	p.changed = make(chan struct{})
}

func (p *page) make() []byte {
	var out bytes.Buffer
	live := sheet.Live{Version: p.version, Problems: p.trouble}
	var err error
	if p.plan == nil {
		err = sheet.Broken(&out, live)
	} else {
		err = sheet.HTML(&out, p.plan, sheet.Options{Units: unitsOf(p.plan), Live: &live})
	}
	if err != nil {
		return []byte(err.Error())
	}
	return out.Bytes()
}

// state is what is shown now, and what will tell of the next.
func (p *page) state() (html []byte, version string, changed <-chan struct{}) {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.html, p.version, p.changed
}

// serve shows a page to the browsers of this machine until the context ends.
func (a *app) serve(ctx context.Context, p *page) error {
	listener, err := (&net.ListenConfig{}).Listen(ctx, "tcp4", "127.0.0.1:0")
	if err != nil {
		return usage("cannot serve: %v", err)
	}
	at := listener.Addr().String()
	server := &http.Server{
		Handler: p.handler(at), ReadHeaderTimeout: 5 * time.Second,
		BaseContext: func(net.Listener) context.Context { return ctx }, // ends the streams of events
	}
	go server.Serve(listener)
	context.AfterFunc(ctx, func() { server.Close() })
	url := "http://" + at + "/"
	a.say("the sheet is at %s for the browsers of this machine; Ctrl-C ends it", url)
	if a.errTerminal {
		browse(url)
	}
	return nil
}

// browse asks the desktop to show an address. Where there is none, the address
// has been said.
func browse(url string) {
	name, args := "xdg-open", []string{url}
	switch runtime.GOOS {
	case "darwin":
		name = "open"
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", url}
	}
	if cmd := exec.Command(name, args...); cmd.Start() == nil {
		go cmd.Wait()
	}
}

// handler answers reads of the page, from this machine and under its own name
// only: another name that leads here is another site's doing.
func (p *page) handler(at string) http.Handler {
	_, port, _ := net.SplitHostPort(at)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Cache-Control", "no-store")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Content-Security-Policy", "frame-ancestors 'none'")
		site := r.Header.Get("Sec-Fetch-Site")
		switch {
		case r.Host != at && r.Host != "localhost:"+port:
			http.Error(w, "not served under this name", http.StatusMisdirectedRequest)
		case r.Method != http.MethodGet && r.Method != http.MethodHead:
			h.Set("Allow", "GET, HEAD")
			http.Error(w, "read only", http.StatusMethodNotAllowed)
		case r.URL.Path == "/events" && site != "" && site != "same-origin":
			http.Error(w, "not for other sites", http.StatusForbidden)
		case r.URL.Path == "/events":
			p.events(w, r)
		case r.URL.Path == "/":
			html, _, _ := p.state()
			h.Set("Content-Type", "text/html; charset=utf-8")
			w.Write(html)
		default:
			http.NotFound(w, r)
		}
	})
}

// events tells the version of the page, now and whenever there is another
// (HTML Standard, server-sent events).
func (p *page) events(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/event-stream")
	if r.Method == http.MethodHead {
		return
	}
	out := http.NewResponseController(w)
	for {
		_, version, changed := p.state()
		if _, err := fmt.Fprintf(w, "retry: 1000\ndata: %s\n\n", version); err != nil || out.Flush() != nil {
			return
		}
		select {
		case <-r.Context().Done():
			return
		case <-changed:
		}
	}
}
