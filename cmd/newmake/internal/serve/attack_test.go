package serve

import (
	"context"
	"fmt"
	"net/http"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Both ways of serving, with a browser that may see the page.
func each(t *testing.T, try func(t *testing.T, s *site, h *handler, host, in, cookie string)) {
	t.Run("this machine", func(t *testing.T) {
		s := newSite()
		h := atHome(s)
		try(t, s, h, loopback, h.door.path(), "")
	})
	t.Run("the network", func(t *testing.T) {
		s := newSite()
		h, _, _ := atLAN(t, s)
		secret, _ := h.gate.enter(h.gate.code())
		try(t, s, h, onLAN, "/", cookieName+"="+secret)
	})
}

const inJSON = "application/json"

// A page of the house may write a reading. The same request is refused when it comes
// under another name (a name that was made to lead here), from another site, as a form
// would send it, or with nothing said of where it comes from.
func TestWhoMayWrite(t *testing.T) {
	each(t, func(t *testing.T, s *site, h *handler, host, in, cookie string) {
		good := "http://" + host
		post := func(host, path, origin, site, kind string) int {
			return asked(h, "POST", host, path, `{}`, "Origin", origin, "Sec-Fetch-Site", site, "Content-Type", kind, "Cookie", cookie).Code
		}
		for _, path := range []string{in + "readings", in + "run"} {
			for _, rebound := range []string{"elsewhere.example", "elsewhere.example:4444", "127.0.0.1", "127.0.0.1:80", "192.168.1.20", "192.168.1.20:80", "localhost", "[::1]:4444", "0.0.0.0:4444", "", host + ".", host + "@elsewhere.example"} {
				assert.Equal(t, http.StatusMisdirectedRequest, post(rebound, path, "http://"+rebound, "same-origin", inJSON), rebound)
			}
			for _, origin := range []string{"", "null", "https://" + host, "http://elsewhere.example", good + ".elsewhere.example", good + "/", good + "0", "http://127.0.0.1", "HTTP://" + host} {
				assert.Equal(t, http.StatusForbidden, post(host, path, origin, "", inJSON), origin)
			}
			for _, site := range []string{"cross-site", "same-site", "none", "anything"} {
				assert.Equal(t, http.StatusForbidden, post(host, path, good, site, inJSON), site)
			}
			for _, kind := range []string{"", "text/plain", "application/x-www-form-urlencoded", "multipart/form-data", "application/jsonx", "text/plain; application/json"} {
				assert.Equal(t, http.StatusUnsupportedMediaType, post(host, path, good, "", kind), kind)
			}
		}
		for _, method := range []string{"PUT", "DELETE", "OPTIONS", "PATCH", "TRACE", "CONNECT", "post"} {
			assert.Equal(t, http.StatusMethodNotAllowed, asked(h, method, host, in+"readings", "{}", "Origin", good, "Content-Type", inJSON, "Cookie", cookie).Code, method)
		}
		for _, path := range []string{in, in + "sheet", in + "events", in + "cut", in + "page.css", in + "readings/", in + "readings/../run", in + "../runs/26-01.batch"} {
			assert.Equal(t, http.StatusNotFound, post(host, path, good, "", inJSON), path)
		}
		assert.Equal(t, http.StatusNotFound, asked(h, "GET", host, in+"readings", "", "Cookie", cookie).Code)
		require.True(t, s.untouched())
		assert.Equal(t, http.StatusOK, post(host, in+"readings", good, "same-origin", inJSON))
		assert.Equal(t, http.StatusOK, post(host, in+"run", good, "", inJSON+"; charset=utf-8"))
		assert.Equal(t, []string{"{}"}, s.kept)
		assert.Equal(t, 1, s.opened)
	})
}

// A page of another site shows nothing of this one, starts nothing here, and is lent
// nothing. Nothing but what is served has a path.
func TestWhoMayRead(t *testing.T) {
	each(t, func(t *testing.T, s *site, h *handler, host, in, cookie string) {
		for _, path := range []string{"events", "cut?to=60", "page.css", "sheet"} {
			assert.Equal(t, http.StatusForbidden, asked(h, "GET", host, in+path, "", "Cookie", cookie, "Sec-Fetch-Site", "cross-site").Code, path)
		}
		for _, path := range []string{"house.batch", "../house.batch", "%2e%2e/house.batch", "..\\house.batch", "runs/26-01.batch", "page.css/../../house.batch", "page.css\x00", "etc/passwd", "/etc/passwd", "sheet/", "SHEET", ".git/config", "."} {
			w := asked(h, "GET", host, in+path, "", "Cookie", cookie)
			assert.Equal(t, http.StatusNotFound, w.Code, path)
			assert.NotContains(t, w.Body.String(), "the page")
		}
		for _, path := range []string{"", "sheet", "page.css", "cut?to=1", "nowhere"} {
			w := asked(h, "GET", host, in+path, "", "Cookie", cookie, "Origin", "http://elsewhere.example")
			head := w.Header()
			assert.Empty(t, head.Get("Access-Control-Allow-Origin"), path)
			assert.Equal(t, "DENY", head.Get("X-Frame-Options"))
			assert.Equal(t, "nosniff", head.Get("X-Content-Type-Options"))
			assert.Equal(t, "no-store", head.Get("Cache-Control"))
			assert.Equal(t, "same-origin", head.Get("Cross-Origin-Resource-Policy"))
			assert.Contains(t, head.Get("Content-Security-Policy"), "frame-ancestors 'none'")
			assert.NotContains(t, head.Get("Content-Security-Policy"), "unsafe")
		}
		assert.Contains(t, asked(h, "GET", host, in, "", "Cookie", cookie).Header().Get("Content-Security-Policy"), "default-src 'none'; script-src 'self'")
		assert.True(t, s.untouched())
	})
}

// What is sent is taken up to a length, and not a byte beyond.
func TestHowMuch(t *testing.T) {
	each(t, func(t *testing.T, s *site, h *handler, host, in, cookie string) {
		send := func(n int) int {
			return asked(h, "POST", host, in+"readings", strings.Repeat("x", n), "Origin", "http://"+host, "Content-Type", inJSON, "Cookie", cookie).Code
		}
		assert.Equal(t, http.StatusRequestEntityTooLarge, send(mostReadings+1))
		assert.Equal(t, http.StatusRequestEntityTooLarge, send(50<<20))
		require.True(t, s.untouched())
		assert.Equal(t, http.StatusOK, send(mostReadings))
		cut := func(n int) int {
			return asked(h, "GET", host, in+"cut?"+("to=" + strings.Repeat("6", n))[:n], "", "Cookie", cookie).Code
		}
		assert.Equal(t, http.StatusOK, cut(mostQuery))
		assert.Equal(t, http.StatusRequestURITooLong, cut(mostQuery+1))
	})
}

// Without a cookie, or with that of another server, of a browser before, or a part of
// one, there is nothing to see but where to type the code.
func TestWhoIsNotLetIn(t *testing.T) {
	s := newSite()
	h, _, _ := atLAN(t, s)
	other, _, _ := atLAN(t, newSite())
	theirs, _ := other.gate.enter(other.gate.code())
	mine, _ := h.gate.enter(h.gate.code())
	for _, cookie := range []string{"", cookieName + "=", cookieName + "=" + theirs, cookieName + "=" + mine[:len(mine)-1], cookieName + "=" + mine + "x",
		cookieName + "=" + strings.ToLower(mine), "other=" + mine, cookieName + "=" + h.gate.code()} {
		for _, path := range []string{"/sheet", "/events", "/cut?to=60", "/page.js", "/readings", "/enter", "/nowhere", "", "//", "/" + mine + "/"} {
			w := asked(h, "GET", onLAN, path, "", "Cookie", cookie)
			assert.Equal(t, http.StatusUnauthorized, w.Code, path)
			assert.NotContains(t, w.Body.String(), "the page")
		}
		for _, path := range []string{"/readings", "/run", "/"} {
			w := asked(h, "POST", onLAN, path, "{}", "Origin", "http://"+onLAN, "Content-Type", inJSON, "Cookie", cookie)
			assert.Equal(t, http.StatusUnauthorized, w.Code, path)
		}
		w := asked(h, "GET", onLAN, "/", "", "Cookie", cookie)
		assert.Equal(t, http.StatusUnauthorized, w.Code)
		assert.Contains(t, w.Body.String(), "The code, please")
		assert.NotContains(t, w.Body.String(), "the page")
		assert.Equal(t, http.StatusOK, asked(h, "GET", onLAN, "/page.css", "").Code, "how the form looks is no secret")
	}
	assert.True(t, s.untouched())
	// Its own is found among others that the browser sends.
	assert.Equal(t, http.StatusOK, asked(h, "GET", onLAN, "/", "", "Cookie", "a=b; "+cookieName+"="+theirs+"; "+cookieName+"="+mine).Code)
	// A server of this machine alone knows no cookie, and the network no path.
	home := atHome(s)
	assert.Equal(t, http.StatusNotFound, asked(home, "GET", loopback, "/", "", "Cookie", cookieName+"="+mine).Code)
}

// The form lets in with the code, once, from the form itself.
func TestEntrance(t *testing.T) {
	s := newSite()
	h, _, _ := atLAN(t, s)
	form := "application/x-www-form-urlencoded"
	code := h.gate.code()
	enter := func(body, origin string) (int, string) {
		w := asked(h, "POST", onLAN, "/enter", body, "Origin", origin, "Content-Type", form)
		return w.Code, w.Header().Get("Set-Cookie")
	}
	good := "http://" + onLAN
	for _, origin := range []string{"", "null", "http://elsewhere.example"} { // another site types codes
		status, set := enter("code="+code, origin)
		assert.Equal(t, http.StatusForbidden, status)
		assert.Empty(t, set)
	}
	status, set := enter("code="+strings.Repeat("2", mostCode), good)
	assert.Equal(t, http.StatusRequestEntityTooLarge, status)
	assert.Empty(t, set)
	status, set = enter("code=wrong", good)
	assert.Equal(t, http.StatusForbidden, status)
	assert.Empty(t, set)
	// A code in the address is none: addresses are kept, and sent on.
	w := asked(h, "POST", onLAN, "/enter?code="+code, "", "Origin", good, "Content-Type", form)
	assert.Equal(t, http.StatusForbidden, w.Code)
	status, set = enter("code="+code, good)
	assert.Equal(t, http.StatusSeeOther, status)
	assert.Regexp(t, `^newmake=[A-Z2-7]{26}; Path=/; Max-Age=86400; HttpOnly; SameSite=Strict$`, set)
	status, set = enter("code="+code, good) // heard on the network, and typed again
	assert.Equal(t, http.StatusForbidden, status)
	assert.Empty(t, set)
}

// However many type at once, five wrong codes are all.
func TestManyAtOnce(t *testing.T) {
	h, _, _ := atLAN(t, newSite())
	code := h.gate.code()
	var all sync.WaitGroup
	var mu sync.Mutex
	count := map[taken]int{}
	for i := range 50 {
		all.Go(func() {
			_, how := h.gate.enter(fmt.Sprint("wrong", i))
			mu.Lock()
			defer mu.Unlock()
			count[how]++
		})
	}
	all.Wait()
	assert.Equal(t, map[taken]int{wrong: codeTries - 1, shut: 50 - codeTries + 1}, count)
	_, how := h.gate.enter(code)
	assert.Equal(t, shut, how)
}

// Of cuts that are asked for one after the other, one is computed at a time, and of
// those that wait the last.
func TestCutsThatAreNotWantedAnyMore(t *testing.T) {
	s := newSite()
	s.hold = make(chan struct{})
	l := newLatest()
	began := make(chan struct{}, 9)
	results := make(chan string, 9)
	ask := func(to string) {
		ok := l.do(t.Context(), func(ctx context.Context) { began <- struct{}{}; s.Cut(ctx, to) })
		results <- fmt.Sprint(to, ok)
	}
	go ask("1")
	<-began
	go ask("2")
	go ask("3")
	dropped := <-results
	assert.Contains(t, []string{"2false", "3false"}, dropped, "the one that was asked for first never begins")
	close(s.hold)
	assert.ElementsMatch(t, []string{"1false", map[string]string{"2false": "3true", "3false": "2true"}[dropped]}, []string{<-results, <-results})
	assert.Len(t, s.cuts, 2)
}
