package serve

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"
	"time"
)

// site is one that shows a text, and remembers what was sent to it.
type site struct {
	mu     sync.Mutex
	shown  Shown
	change chan struct{}
	kept   []string
	opened int
	cuts   []string
	hold   chan struct{} // until it is closed a cut is not done
}

func newSite() *site {
	s := &site{}
	s.show("the page")
	return s
}

func (s *site) show(page string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.change != nil {
		close(s.change)
	}
	s.change = make(chan struct{})
	s.shown = Shown{Page: []byte(page), Sheet: []byte("paper: " + page), Version: strings.ReplaceAll(page, " ", "-"), Changed: s.change}
}

func (s *site) Shown() Shown { s.mu.Lock(); defer s.mu.Unlock(); return s.shown }

func (s *site) File(name string) (string, []byte, bool) {
	return "text/css", []byte("body {}"), name == "page.css"
}

func (s *site) Open(context.Context) Answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.opened++
	return Answer{http.StatusOK, "opened"}
}

func (s *site) Keep(_ context.Context, sent []byte) Answer {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.kept = append(s.kept, string(sent))
	return Answer{http.StatusOK, "kept"}
}

func (s *site) Cut(_ context.Context, to string) Answer {
	if s.hold != nil {
		<-s.hold
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.cuts = append(s.cuts, to)
	return Answer{http.StatusOK, to}
}

// untouched reports whether nothing was written.
func (s *site) untouched() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return len(s.kept) == 0 && s.opened == 0
}

const (
	loopback = "127.0.0.1:4444"
	onLAN    = "192.168.1.20:4444"
)

// asked is a request; head are its headers, two and two.
func asked(h *handler, method, host, path, body string, head ...string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, "http://"+loopback+"/", strings.NewReader(body))
	r.Host = host
	r.URL.Path, r.URL.RawQuery, _ = strings.Cut(path, "?")
	for i := 0; i < len(head); i += 2 {
		if head[i+1] != "" {
			r.Header.Add(head[i], head[i+1])
		}
	}
	ctx, cancel := context.WithTimeout(context.Background(), 50*time.Millisecond)
	defer cancel()
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r.WithContext(ctx))
	return w
}

func atHome(s *site) *handler {
	return &handler{site: s, at: loopback, wait: usual, now: time.Now, door: newDoor(loopback), cut: newLatest()}
}

// clock is one that a test sets.
type clock struct{ at time.Time }

func (c *clock) now() time.Time { return c.at }

func atLAN(t *testing.T, s *site) (*handler, *clock, *[]string) {
	t.Helper()
	c, said := &clock{time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC)}, &[]string{}
	say := func(format string, args ...any) { *said = append(*said, fmt.Sprintf(format, args...)) }
	return &handler{site: s, at: onLAN, wait: usual, now: c.now, gate: newGate(say, c.now), cut: newLatest()}, c, said
}
