package preview

import (
	"context"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"sync/atomic"
	"time"
)

// patience is how long the server waits for a browser: for a request, for what it
// sends to be taken, and for another request on the same connection. alive is how
// often a stream of events says that it is there, which finds those that are not.
type patience struct{ request, taken, next, alive time.Duration }

var usual = patience{request: 5 * time.Second, taken: 10 * time.Second, next: 30 * time.Second, alive: 30 * time.Second}

// mostConnections is far more than the browsers of one person open.
const mostConnections = 100

// Serve shows the page to the browsers of this machine until the context ends. It
// gives the page's address, and one that leads to it once: what a browser is
// started with can be seen by all.
func (p *Page) Serve(ctx context.Context) (url, once string, err error) {
	listener, err := (&net.ListenConfig{}).Listen(ctx, "tcp4", "127.0.0.1:0")
	if err != nil {
		return "", "", err
	}
	d := newDoor(listener.Addr().String())
	server := p.server(ctx, d, usual)
	go server.Serve(listener)
	context.AfterFunc(ctx, func() { server.Close() })
	return d.url(), d.once(time.Now()), nil
}

// server answers for a page behind a door. No connection is kept that says
// nothing.
func (p *Page) server(ctx context.Context, d *door, wait patience) *http.Server {
	var open atomic.Int64
	return &http.Server{
		Handler:           p.handler(d, wait),
		ReadHeaderTimeout: wait.request, ReadTimeout: wait.request, WriteTimeout: wait.taken, IdleTimeout: wait.next,
		MaxHeaderBytes: 16 << 10,
		ErrorLog:       log.New(io.Discard, "", 0),                        // whoever knocks does not write to the terminal
		BaseContext:    func(net.Listener) context.Context { return ctx }, // ends the streams of events
		ConnState: func(c net.Conn, s http.ConnState) {
			switch s {
			case http.StateNew:
				if open.Add(1) > mostConnections {
					c.Close()
				}
			case http.StateClosed, http.StateHijacked:
				open.Add(-1)
			}
		},
	}
}

// handler answers reads of the page, from this machine, under its own name and
// behind its door only: another name that leads here is another site's doing, and
// who does not know the path is another user of the machine.
func (p *Page) handler(d *door, wait patience) http.Handler {
	_, port, _ := net.SplitHostPort(d.at)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Cache-Control", "no-store")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Content-Security-Policy", "frame-ancestors 'none'")
		if r.Host != d.at && r.Host != "localhost:"+port {
			http.Error(w, "not served under this name", http.StatusMisdirectedRequest)
			return
		}
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			h.Set("Allow", "GET, HEAD")
			http.Error(w, "read only", http.StatusMethodNotAllowed)
			return
		}
		if r.Method == http.MethodGet && d.opens(r.URL.Path, time.Now()) {
			http.Redirect(w, r, d.path(), http.StatusSeeOther)
			return
		}
		rest, known := d.behind(r.URL.Path)
		site := r.Header.Get("Sec-Fetch-Site")
		switch {
		case !known:
			http.NotFound(w, r)
		case rest == "events" && site != "" && site != "same-origin":
			http.Error(w, "not for other sites", http.StatusForbidden)
		case rest == "events":
			p.events(w, r, wait)
		case rest == "":
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
func (p *Page) events(w http.ResponseWriter, r *http.Request, wait patience) {
	w.Header().Set("Content-Type", "text/event-stream")
	if r.Method == http.MethodHead {
		return
	}
	out := http.NewResponseController(w)
	_ = out.SetReadDeadline(time.Time{}) // it stays open; only what it sends must be taken in time
	alive := time.NewTicker(wait.alive)
	defer alive.Stop()
	_, version, changed := p.state()
	message := fmt.Sprintf("retry: 1000\ndata: %s\n\n", version)
	for {
		_ = out.SetWriteDeadline(time.Now().Add(wait.taken))
		if _, err := io.WriteString(w, message); err != nil || out.Flush() != nil {
			return
		}
		select {
		case <-r.Context().Done():
			return
		case <-changed:
			_, version, changed = p.state()
			message = fmt.Sprintf("retry: 1000\ndata: %s\n\n", version)
		case <-alive.C:
			message = ":\n\n" // a comment
		}
	}
}
