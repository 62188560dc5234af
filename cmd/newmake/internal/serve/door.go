package serve

import (
	"crypto/rand"
	"crypto/subtle"
	"strings"
	"sync"
	"time"
)

// onceFor is how long a browser may take to come up.
const onceFor = time.Minute

// door keeps other users of the machine from a page that is served on it: the
// page stands under a path that nobody can guess. What a browser is started with
// can be read by all who list processes, so it gets an address of its own, which
// leads to the path once.
type door struct {
	at    string // host:port
	token string

	mu     sync.Mutex
	ticket string
	until  time.Time
}

func newDoor(at string) *door { return &door{at: at, token: rand.Text()} }

func (d *door) path() string { return "/" + d.token + "/" }

func (d *door) url() string { return "http://" + d.at + d.path() }

// once is an address that leads in one time, for a while from now.
func (d *door) once(now time.Time) string {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.ticket, d.until = rand.Text(), now.Add(onceFor)
	return "http://" + d.at + "/open/" + d.ticket
}

// opens reports whether a path is the one that leads in once. It does so no more.
func (d *door) opens(path string, now time.Time) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.ticket == "" || !sameSecret(path, "/open/"+d.ticket) {
		return false
	}
	d.ticket = ""
	return now.Before(d.until)
}

// behind gives what follows the door in a path.
func (d *door) behind(path string) (rest string, known bool) {
	token, rest, found := strings.Cut(strings.TrimPrefix(path, "/"), "/")
	return rest, found && sameSecret(token, d.token)
}

// sameSecret compares without telling by its time how much was right.
func sameSecret(a, b string) bool { return subtle.ConstantTimeCompare([]byte(a), []byte(b)) == 1 }
