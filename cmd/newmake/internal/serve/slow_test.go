package serve

import (
	"bufio"
	"errors"
	"io"
	"net"
	"net/http"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// served runs the server with little patience.
func served(t *testing.T, wait patience) (*site, *door) {
	t.Helper()
	p := newSite()
	l, err := net.Listen("tcp4", "127.0.0.1:0")
	require.NoError(t, err)
	d := newDoor(l.Addr().String())
	s := newServer(t.Context(), &handler{site: p, at: d.at, wait: wait, now: time.Now, door: d, cut: newLatest()})
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
	alive, versions, event := 0, 0, ""
	for versions < 2 && lines.Scan() {
		switch line := lines.Text(); {
		case line == "event: alive":
			if alive++; alive == 20 {
				p.show("other words")
			}
			event = "alive"
		case line == "":
			event = ""
		case strings.HasPrefix(line, "data: ") && event == "":
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
