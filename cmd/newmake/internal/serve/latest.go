package serve

import (
	"context"
	"net/http"
	"sync"
)

// latest does one thing at a time, and of those that wait only the last that was asked
// for: who moves a slider wants to know where it stands, not where it was.
type latest struct {
	room   chan struct{}
	mu     sync.Mutex
	cancel context.CancelFunc
}

func newLatest() *latest { return &latest{room: make(chan struct{}, 1)} }

// do says false if something newer was asked for before its turn came, or while it went
// on.
func (l *latest) do(ctx context.Context, what func(context.Context)) bool {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	l.mu.Lock()
	if l.cancel != nil {
		l.cancel()
	}
	l.cancel = cancel
	l.mu.Unlock()
	select {
	case l.room <- struct{}{}:
		defer func() { <-l.room }()
	case <-ctx.Done():
		return false
	}
	if ctx.Err() != nil {
		return false
	}
	what(ctx)
	return ctx.Err() == nil
}

// cutTo says what another cut would give.
func (h *handler) cutTo(w http.ResponseWriter, r *http.Request) {
	if len(r.URL.RawQuery) > mostQuery {
		http.Error(w, "that is more than is taken here", http.StatusRequestURITooLong)
		return
	}
	var a Answer
	if !h.cut.do(r.Context(), func(ctx context.Context) { a = h.site.Cut(ctx, r.URL.Query().Get("to")) }) {
		a = Answer{http.StatusServiceUnavailable, Refused{Refused: "another cut was asked for"}}
	}
	answer(w, a)
}
