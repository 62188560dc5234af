package serve

import (
	"fmt"
	"io"
	"net/http"
	"time"
)

// events tells the version of the page, now and whenever there is another, and from
// time to time that the server is there, with its clock, which the tablet's own may be
// far from (HTML Standard, server-sent events).
func (h *handler) events(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/event-stream")
	if r.Method == http.MethodHead {
		return
	}
	out := http.NewResponseController(w)
	_ = out.SetReadDeadline(time.Time{}) // it stays open; only what it sends must be taken in time
	alive := time.NewTicker(h.wait.alive)
	defer alive.Stop()
	shown := h.site.Shown()
	message := h.news(shown.Version)
	for {
		_ = out.SetWriteDeadline(h.now().Add(h.wait.taken))
		if _, err := io.WriteString(w, message); err != nil || out.Flush() != nil {
			return
		}
		select {
		case <-r.Context().Done():
			return
		case <-shown.Changed:
			shown = h.site.Shown()
			message = h.news(shown.Version)
		case <-alive.C:
			if h.gate != nil && !h.gate.knows(r) {
				return // its day is over
			}
			message = fmt.Sprintf("event: alive\ndata: %d\n\n", h.now().UnixMilli())
		}
	}
}

func (h *handler) news(version string) string {
	return fmt.Sprintf("retry: 1000\nevent: alive\ndata: %d\n\ndata: %s\n\n", h.now().UnixMilli(), version)
}
