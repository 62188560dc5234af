package serve

import (
	"crypto/rand"
	"fmt"
	"math/big"
	"strings"
	"sync"
	"time"
)

// A code lets one browser in. It is read off a screen and typed with wet hands: it has
// no letter that looks like another, and may be typed in small letters, with its hyphen
// or without.
const (
	codeLetters = "23456789ABCDEFGHJKMNPQRSTVWXYZ"
	codeLength  = 8
	codeTries   = 5
	codeFor     = time.Hour
)

// gate lets browsers in, one for each code, and knows them by their cookies after that.
type gate struct {
	say func(format string, args ...any)
	now func() time.Time

	mu       sync.Mutex
	secret   string // "" when no code lets anybody in
	until    time.Time
	tries    int
	sessions []session
}

func newGate(say func(string, ...any), now func() time.Time) *gate {
	g := &gate{say: say, now: now}
	g.renew()
	return g
}

// renew makes a code; g.mu is held, or nobody has g yet.
func (g *gate) renew() {
	var b strings.Builder
	for range codeLength {
		n, err := rand.Int(rand.Reader, big.NewInt(int64(len(codeLetters))))
		if err != nil {
			panic(err) // it does not fail (crypto/rand)
		}
		b.WriteByte(codeLetters[n.Int64()])
	}
	g.secret, g.tries, g.until = b.String(), codeTries, g.now().Add(codeFor)
}

// code is the code as a person types it.
func (g *gate) code() string {
	g.mu.Lock()
	defer g.mu.Unlock()
	return grouped(g.secret)
}

func grouped(code string) string {
	if len(code) < codeLength {
		return code
	}
	return code[:codeLength/2] + "-" + code[codeLength/2:]
}

// How a code was taken.
type taken uint8

const (
	wrong taken = iota
	right
	shut // no code lets anybody in any more
)

// enter takes a code, and gives the cookie of the browser that it lets in.
func (g *gate) enter(typed string) (cookie string, how taken) {
	typed = strings.ToUpper(strings.NewReplacer("-", "", " ", "").Replace(typed))
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.secret == "" {
		return "", shut
	}
	if !g.now().Before(g.until) {
		g.shut("the code is an hour old, and lets nobody in any more")
		return "", shut
	}
	if !sameSecret(typed, g.secret) {
		if g.tries--; g.tries == 0 {
			g.shut("five wrong codes were typed: nobody is let in any more")
			return "", shut
		}
		return "", wrong
	}
	if len(g.sessions) == mostSessions-1 {
		g.shut(fmt.Sprintf("that was the last browser that is let in: there are %d", mostSessions))
	} else {
		g.renew()
		g.say("a browser was let in; the code for another is %s", grouped(g.secret))
	}
	return g.admit(), right
}

// shut lets nobody in any more; those who are in stay.
func (g *gate) shut(why string) {
	g.secret = ""
	g.say("%s; for a new code end this with Ctrl-C and begin again", why)
}
