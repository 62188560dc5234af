package preview

import (
	"bufio"
	"context"
	"errors"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The page is for the browsers of this machine, under its own name, to read, and
// for who knows its path.
func TestServe(t *testing.T) {
	p := New()
	p.Problems("no sheet")
	const at = "127.0.0.1:4444"
	d := newDoor(at)
	ask := func(method, host, path, site string) *httptest.ResponseRecorder {
		r := httptest.NewRequest(method, path, nil)
		r.Host = host
		if site != "" {
			r.Header.Set("Sec-Fetch-Site", site)
			r.Header.Set("Origin", "https://elsewhere.example")
		}
		ctx, cancel := context.WithTimeout(t.Context(), 50*time.Millisecond)
		defer cancel()
		w := httptest.NewRecorder()
		p.handler(d, usual).ServeHTTP(w, r.WithContext(ctx))
		assert.Empty(t, w.Header().Get("Access-Control-Allow-Origin"))
		return w
	}
	in := d.path()
	assert.Equal(t, http.StatusOK, ask("GET", at, in, "").Code)
	assert.Contains(t, ask("GET", at, in, "").Body.String(), "no sheet")
	assert.Equal(t, http.StatusOK, ask("GET", "localhost:4444", in, "").Code)
	for _, host := range []string{"elsewhere.example", "elsewhere.example:4444", "127.0.0.1:80", "localhost", ""} {
		assert.Equal(t, http.StatusMisdirectedRequest, ask("GET", host, in, "").Code, host)
	}
	for _, method := range []string{"POST", "PUT", "DELETE", "OPTIONS", "PATCH"} {
		assert.Equal(t, http.StatusMethodNotAllowed, ask(method, at, in, "").Code, method)
	}
	for _, path := range []string{"/", "/events", "//", "/x/", "/" + newDoor(at).token + "/", "/" + d.token[:25] + "/", "/" + d.token + "x/",
		"/" + d.token, strings.ToLower(in), in + "../house.batch", "/open/", "/open", "/open/" + d.token} {
		w := ask("GET", at, path, "")
		assert.Equal(t, http.StatusNotFound, w.Code, path)
		assert.NotContains(t, w.Body.String(), "sheet", path)
	}
	assert.Equal(t, http.StatusForbidden, ask("GET", at, in+"events", "cross-site").Code)
	events := ask("GET", at, in+"events", "same-origin")
	assert.Equal(t, "text/event-stream", events.Header().Get("Content-Type"))
	_, version, _ := p.state()
	assert.Equal(t, "retry: 1000\ndata: "+version+"\n\n", events.Body.String())
	assert.True(t, strings.Contains(ask("GET", at, in, "").Body.String(), `data-version="`+version+`"`), "the page knows its own version")

	// What a browser is started with leads in once.
	once := strings.TrimPrefix(d.once(time.Now()), "http://"+at)
	assert.NotContains(t, once, d.token, "it is seen by all who list processes")
	assert.Equal(t, http.StatusNotFound, ask("HEAD", at, once, "").Code)
	first := ask("GET", at, once, "")
	assert.Equal(t, http.StatusSeeOther, first.Code)
	assert.Equal(t, in, first.Header().Get("Location"))
	assert.Equal(t, http.StatusNotFound, ask("GET", at, once, "").Code)
}

// The address that leads in once does so for a while only.
func TestOnceEnds(t *testing.T) {
	now := time.Now()
	d := newDoor("127.0.0.1:4444")
	path := func() string { return strings.TrimPrefix(d.once(now), "http://127.0.0.1:4444") }
	assert.True(t, d.opens(path(), now.Add(onceFor-time.Nanosecond)))
	assert.False(t, d.opens(path(), now.Add(onceFor)))
	assert.NotEqual(t, newDoor("").token, newDoor("").token)
}

// served runs the server with little patience.
func served(t *testing.T, wait patience) (*Page, *door) {
	t.Helper()
	p := New()
	p.Problems("no sheet")
	l, err := net.Listen("tcp4", "127.0.0.1:0")
	require.NoError(t, err)
	d := newDoor(l.Addr().String())
	s := p.server(t.Context(), d, wait)
	go s.Serve(l)
	t.Cleanup(func() { s.Close() })
	return p, d
}

// A connection on which nothing comes is closed: before a request, within one,
// and after one.
func TestIdleConnectionsEnd(t *testing.T) {
	_, d := served(t, patience{request: 20 * time.Millisecond, taken: time.Second, next: 20 * time.Millisecond, alive: time.Hour})
	for _, said := range []string{"", "GET / HT", "GET / HTTP/1.1\r\nHost: " + d.at + "\r\n\r\n",
		"GET / HTTP/1.1\r\nHost: " + d.at + "\r\nContent-Length: 10\r\n\r\n"} {
		c, err := net.Dial("tcp4", d.at)
		require.NoError(t, err)
		_, err = io.WriteString(c, said)
		require.NoError(t, err)
		require.NoError(t, c.SetReadDeadline(time.Now().Add(20*time.Second)))
		_, err = io.ReadAll(c)
		assert.False(t, errors.Is(err, os.ErrDeadlineExceeded), "%q is waited for", said)
		c.Close()
	}
}

// A stream of events outlives the patience for all else, and says that it is
// there.
func TestEventsStay(t *testing.T) {
	p, d := served(t, patience{request: 20 * time.Millisecond, taken: 20 * time.Millisecond, next: 20 * time.Millisecond, alive: 10 * time.Millisecond})
	r, err := http.Get(d.url() + "events")
	require.NoError(t, err)
	defer r.Body.Close()
	lines := bufio.NewScanner(r.Body)
	alive, versions := 0, 0
	for versions < 2 && lines.Scan() {
		switch line := lines.Text(); {
		case line == ":":
			if alive++; alive == 20 {
				p.Problems("other words")
			}
		case strings.HasPrefix(line, "data: "):
			versions++
		}
	}
	assert.Equal(t, 2, versions)
	assert.GreaterOrEqual(t, alive, 20)
}

// Nobody takes all the connections there are: one too many is closed.
func TestTooManyConnections(t *testing.T) {
	_, d := served(t, patience{request: time.Hour, taken: time.Hour, next: time.Hour, alive: time.Hour})
	var all []net.Conn
	defer func() {
		for _, c := range all {
			c.Close()
		}
	}()
	for range mostConnections + 1 {
		c, err := net.Dial("tcp4", d.at)
		require.NoError(t, err)
		all = append(all, c)
	}
	last := all[mostConnections]
	require.NoError(t, last.SetReadDeadline(time.Now().Add(20*time.Second)))
	_, err := last.Read(make([]byte, 1))
	assert.False(t, errors.Is(err, os.ErrDeadlineExceeded), "it is kept")
	first := all[0] // and those before it are served
	_, err = io.WriteString(first, "GET / HTTP/1.0\r\nHost: "+d.at+"\r\n\r\n")
	require.NoError(t, err)
	require.NoError(t, first.SetReadDeadline(time.Now().Add(20*time.Second)))
	text, err := io.ReadAll(first)
	require.NoError(t, err)
	assert.Contains(t, string(text), "404")
}
