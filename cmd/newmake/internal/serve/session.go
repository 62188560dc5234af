package serve

import (
	"crypto/rand"
	"net/http"
	"time"
)

// A session is a browser that was let in. It ends with the server, and after a day.
type session struct {
	secret string
	until  time.Time
}

const (
	mostSessions = 8
	sessionFor   = 24 * time.Hour
	cookieName   = "newmake"
)

// admit begins a session, and gives its cookie. g.mu is held.
func (g *gate) admit() string {
	s := session{rand.Text(), g.now().Add(sessionFor)}
	g.sessions = append(g.sessions, s)
	return s.secret
}

// knows reports whether a request is of a browser that was let in.
func (g *gate) knows(r *http.Request) bool {
	g.mu.Lock()
	defer g.mu.Unlock()
	for _, c := range r.CookiesNamed(cookieName) {
		for _, s := range g.sessions {
			if sameSecret(c.Value, s.secret) && g.now().Before(s.until) {
				return true
			}
		}
	}
	return false
}

// cookie identifies a browser. No script can read it, and no other site sends it. It
// can't be restricted to encrypted connections, since there are none.
func cookie(secret string) *http.Cookie {
	return &http.Cookie{Name: cookieName, Value: secret, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode, MaxAge: int(sessionFor / time.Second)}
}
