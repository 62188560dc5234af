package serve

import (
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"strings"
	"time"
)

// How much a request may send.
const (
	mostReadings = 8 << 10 // bytes, of a visit's readings
	mostCode     = 256     // of a form with a code
	mostQuery    = 64      // of what is asked of a cut
)

// handler answers one address. It has a door, on this machine, or a gate.
type handler struct {
	site Site
	at   string // host:port
	wait patience
	now  func() time.Time
	door *door
	gate *gate
	cut  *latest
}

func (h *handler) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	secure(w.Header())
	if h.door != nil { // browsers take it of this machine alone, where the connection is not encrypted
		w.Header().Set("Cross-Origin-Opener-Policy", "same-origin")
	}
	if !h.named(r.Host) {
		http.Error(w, "not served under this name", http.StatusMisdirectedRequest)
		return
	}
	switch r.Method {
	case http.MethodGet, http.MethodHead:
	case http.MethodPost:
		if !ours(r) {
			http.Error(w, "not for other sites", http.StatusForbidden)
			return
		}
	default:
		w.Header().Set("Allow", "GET, HEAD, POST")
		http.Error(w, "not done here", http.StatusMethodNotAllowed)
		return
	}
	if h.gate != nil {
		h.atGate(w, r)
		return
	}
	if r.Method == http.MethodGet && h.door.opens(r.URL.Path, h.now()) {
		http.Redirect(w, r, h.door.path(), http.StatusSeeOther)
		return
	}
	rest, known := h.door.behind(r.URL.Path)
	if !known {
		http.NotFound(w, r)
		return
	}
	h.inside(w, r, rest)
}

// secure sets what holds of every answer: nothing is kept, framed, or lent to another
// site, and the page runs its own script and no other.
func secure(h http.Header) {
	h.Set("Cache-Control", "no-store")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("X-Frame-Options", "DENY")
	h.Set("Referrer-Policy", "same-origin") // a form says where it comes from
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Content-Security-Policy", "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'")
}

// named reports whether a request names the address that is served. Another name that leads
// here is another site's doing.
func (h *handler) named(host string) bool {
	return host == h.at || h.door != nil && host == "localhost:"+portText(h.at)
}

// ours reports whether a request comes from the page itself. A browser says so of all that
// changes something (Fetch Standard, origin header; Fetch Metadata); who says nothing is
// not believed.
func ours(r *http.Request) bool {
	return r.Header.Get("Origin") == "http://"+r.Host && fromHere(r)
}

// fromHere reports whether no other site has a request made, as far as the browser tells.
func fromHere(r *http.Request) bool {
	site := r.Header.Get("Sec-Fetch-Site")
	return site == "" || site == "same-origin"
}

// inside answers who may see the page.
func (h *handler) inside(w http.ResponseWriter, r *http.Request, path string) {
	post := r.Method == http.MethodPost
	if path != "" && !fromHere(r) && !(path == "sheet" && r.Header.Get("Sec-Fetch-Site") == "none") {
		http.Error(w, "not for other sites", http.StatusForbidden)
		return
	}
	switch {
	case post && path == "readings":
		if sent, ok := body(w, r); ok {
			answer(w, h.site.Keep(r.Context(), sent))
		}
	case post && path == "run":
		if _, ok := body(w, r); ok {
			answer(w, h.site.Open(r.Context()))
		}
	case post:
		http.NotFound(w, r)
	case path == "":
		html(w, h.site.Shown().Page)
	case path == "sheet":
		// The sheet has a policy of its own, which allows its style alone.
		w.Header().Set("Content-Security-Policy", "frame-ancestors 'none'")
		html(w, h.site.Shown().Sheet)
	case path == "events":
		h.events(w, r)
	case path == "cut":
		h.cutTo(w, r)
	default:
		h.file(w, r, path)
	}
}

func (h *handler) file(w http.ResponseWriter, r *http.Request, name string) {
	kind, content, known := h.site.File(name)
	if !known {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", kind)
	w.Write(content)
}

func html(w http.ResponseWriter, text []byte) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Write(text)
}

// body reads what was sent as JSON, which a form of another site can't send.
func body(w http.ResponseWriter, r *http.Request) ([]byte, bool) {
	kind, _, _ := strings.Cut(r.Header.Get("Content-Type"), ";")
	if strings.TrimSpace(kind) != "application/json" {
		http.Error(w, "only JSON is taken here", http.StatusUnsupportedMediaType)
		return nil, false
	}
	sent, err := io.ReadAll(http.MaxBytesReader(w, r.Body, mostReadings))
	if err != nil {
		tooLong(w, err)
		return nil, false
	}
	return sent, true
}

func tooLong(w http.ResponseWriter, err error) {
	var more *http.MaxBytesError
	if errors.As(err, &more) {
		http.Error(w, "that is more than is taken here", http.StatusRequestEntityTooLarge)
		return
	}
	http.Error(w, "it did not come whole", http.StatusBadRequest)
}

func answer(w http.ResponseWriter, a Answer) {
	text, err := json.Marshal(a.Body)
	if err != nil {
		http.Error(w, "it cannot be said", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(a.Status)
	w.Write(text)
}
