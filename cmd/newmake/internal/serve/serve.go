// Package serve shows the page of a batch to the browsers of its own house, and takes
// from them the readings of the run and nothing else.
//
// It knows no recipe: what stands on the page, and what a reading does, comes from a
// Site. What it holds to is who may ask. On this machine the page stands under a path
// that nobody can guess. On an address of the house's own network, which somebody has
// to ask for by name, a browser has to be let in by a code, and is known after that by
// a cookie. Either way a request has to name the address that is served (a name of
// somebody else's that leads here is refused, and so is a page of another site), what
// it sends is small, and nobody waits for who is slow.
package serve

import (
	"context"
	"hash/fnv"
	"io"
	"log"
	"net"
	"net/http"
	"net/netip"
	"strconv"
	"sync/atomic"
	"time"

	"newmake/lang/diag"
	"newmake/lang/wholefile"
)

// Options is where a page is served.
type Options struct {
	// LAN is the address of this machine that is served, as Private gives it; the zero
	// address is the loopback's: this machine alone.
	LAN netip.Addr
	// Key names what is served, so that its page has the same port each time, as far as
	// that is free: what a browser keeps, it keeps for an address.
	Key string
	// Say tells the person at the terminal.
	Say func(format string, args ...any)
}

// Place is where a page can be seen.
type Place struct {
	URL string
	// Once leads to the page one time and for a while: what a browser is started with
	// can be seen by all who list processes. It is the page's own address where a code
	// is asked.
	Once string
	Code string // that lets the first browser in; "" on this machine
}

// Serve shows a site until the context ends.
func Serve(ctx context.Context, site Site, o Options) (Place, error) {
	host := o.LAN
	if !host.IsValid() {
		host = netip.AddrFrom4([4]byte{127, 0, 0, 1})
	}
	listener, err := listen(ctx, host, o.Key)
	if err != nil && o.LAN.IsValid() {
		return Place{}, diag.Refuse("cannot serve on %s: %s%s", host, wholefile.Reason(err), yours())
	}
	if err != nil {
		return Place{}, diag.Refuse("cannot serve: %s", wholefile.Reason(err))
	}
	at := listener.Addr().String()
	h := &handler{site: site, at: at, wait: usual, now: time.Now, cut: newLatest()}
	place := Place{URL: "http://" + at + "/"}
	if o.LAN.IsValid() {
		h.gate = newGate(o.Say, h.now)
		place.Once, place.Code = place.URL, h.gate.code()
	} else {
		h.door = newDoor(at)
		place.URL, place.Once = h.door.url(), h.door.once(h.now())
	}
	server := newServer(ctx, h)
	go server.Serve(listener)
	context.AfterFunc(ctx, func() { server.Close() })
	return place, nil
}

// listen takes the port of a key, or any where that is taken.
func listen(ctx context.Context, host netip.Addr, key string) (net.Listener, error) {
	var c net.ListenConfig
	l, err := c.Listen(ctx, "tcp", netip.AddrPortFrom(host, portOf(key)).String())
	if err != nil {
		l, err = c.Listen(ctx, "tcp", netip.AddrPortFrom(host, 0).String())
	}
	return l, err
}

// Ports that nobody is given (RFC 6335, section 6).
const (
	firstPort = 49152
	ports     = 65536 - firstPort
)

func portOf(key string) uint16 {
	h := fnv.New32a()
	io.WriteString(h, key)
	return uint16(firstPort + h.Sum32()%ports)
}

// patience is how long the server waits for a browser: for a request, for what it
// sends to be taken, and for another request on the same connection. alive is how
// often a stream of events says that it is there: that finds those that are not, and a
// page that hears nothing knows that the server is gone.
type patience struct{ request, taken, next, alive time.Duration }

var usual = patience{request: 5 * time.Second, taken: 10 * time.Second, next: 30 * time.Second, alive: 10 * time.Second}

// mostConnections is far more than the browsers of one house open.
const mostConnections = 100

// newServer keeps no connection that says nothing.
func newServer(ctx context.Context, h *handler) *http.Server {
	var open atomic.Int64
	return &http.Server{
		Handler:           h,
		ReadHeaderTimeout: h.wait.request, ReadTimeout: h.wait.request, WriteTimeout: h.wait.taken, IdleTimeout: h.wait.next,
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

// portText is the port of an address.
func portText(at string) string {
	if a, err := netip.ParseAddrPort(at); err == nil {
		return strconv.Itoa(int(a.Port()))
	}
	return ""
}
