package serve

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A code can be typed as it is read; the next browser has another.
func TestCode(t *testing.T) {
	h, _, said := atLAN(t, newSite())
	code := h.gate.code()
	assert.Regexp(t, `^[2-9A-Z]{4}-[2-9A-Z]{4}$`, code)
	assert.NotContains(t, codeLetters, "0")
	assert.Len(t, codeLetters, 30)
	_, how := h.gate.enter(" " + strings.ToLower(strings.Replace(code, "-", " ", 1)))
	assert.Equal(t, right, how)
	assert.Contains(t, (*said)[0], "the code for another")
	assert.NotEqual(t, code, h.gate.code())
	_, how = h.gate.enter(code)
	assert.Equal(t, wrong, how, "it lets in once")
}

// Four wrong ones may come before the right one, and not five.
func TestTries(t *testing.T) {
	for tries, want := range map[int]taken{codeTries - 1: right, codeTries: shut} {
		h, _, said := atLAN(t, newSite())
		code := h.gate.code()
		for i := range tries {
			_, how := h.gate.enter(strings.Repeat("2", i+1))
			require.Equal(t, i == codeTries-1, how == shut, i)
		}
		cookie, how := h.gate.enter(code)
		assert.Equal(t, want, how, tries)
		assert.Equal(t, want == right, cookie != "")
		if want == shut {
			assert.Contains(t, (*said)[0], "five wrong codes")
		}
	}
}

// A code lets in for an hour, and a cookie for a day.
func TestAge(t *testing.T) {
	for past, want := range map[time.Duration]taken{codeFor - time.Nanosecond: right, codeFor: shut} {
		h, c, _ := atLAN(t, newSite())
		code := h.gate.code()
		c.at = c.at.Add(past)
		_, how := h.gate.enter(code)
		assert.Equal(t, want, how, past)
	}
	h, c, _ := atLAN(t, newSite())
	secret, _ := h.gate.enter(h.gate.code())
	c.at = c.at.Add(sessionFor - time.Nanosecond)
	assert.Equal(t, 200, asked(h, "GET", onLAN, "/", "", "Cookie", cookieName+"="+secret).Code)
	c.at = c.at.Add(time.Nanosecond)
	assert.Equal(t, 401, asked(h, "GET", onLAN, "/", "", "Cookie", cookieName+"="+secret).Code)
}

// So many browsers are let in, and no more; those who are in stay.
func TestMostSessions(t *testing.T) {
	h, _, said := atLAN(t, newSite())
	var first string
	for i := range mostSessions {
		secret, how := h.gate.enter(h.gate.code())
		require.Equal(t, right, how, i)
		if i == 0 {
			first = secret
		}
	}
	assert.Contains(t, (*said)[mostSessions-1], "the last browser")
	_, how := h.gate.enter("")
	assert.Equal(t, shut, how)
	assert.Empty(t, h.gate.code())
	assert.Equal(t, 200, asked(h, "GET", onLAN, "/", "", "Cookie", cookieName+"="+first).Code)
}
