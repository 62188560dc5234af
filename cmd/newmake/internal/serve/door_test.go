package serve

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// On this machine the page is for who knows its path.
func TestBehindTheDoor(t *testing.T) {
	s := newSite()
	h := atHome(s)
	d := h.door
	in := d.path()
	get := func(path string, head ...string) int { return asked(h, "GET", loopback, path, "", head...).Code }
	page := asked(h, "GET", loopback, in, "")
	assert.Equal(t, http.StatusOK, page.Code)
	assert.Equal(t, "the page", page.Body.String())
	assert.Equal(t, http.StatusOK, asked(h, "HEAD", loopback, in, "").Code)
	assert.Equal(t, http.StatusOK, asked(h, "GET", "localhost:4444", in, "").Code)
	assert.Equal(t, "paper: the page", asked(h, "GET", loopback, in+"sheet", "").Body.String())
	assert.Equal(t, http.StatusOK, get(in+"page.css"))
	for _, path := range []string{"/", "/events", "//", "/x/", "/" + newDoor(loopback).token + "/", "/" + d.token[:25] + "/", "/" + d.token + "x/",
		"/" + d.token, strings.ToLower(in), "/open/", "/open", "/open/" + d.token, "/enter", "/readings"} {
		w := asked(h, "GET", loopback, path, "")
		assert.Equal(t, http.StatusNotFound, w.Code, path)
		assert.NotContains(t, w.Body.String(), "the page", path)
	}
	events := asked(h, "GET", loopback, in+"events", "", "Sec-Fetch-Site", "same-origin")
	assert.Equal(t, "text/event-stream", events.Header().Get("Content-Type"))
	assert.Contains(t, events.Body.String(), "data: the-page\n\n")

	// What a browser is started with leads in once.
	once := strings.TrimPrefix(d.once(time.Now()), "http://"+loopback)
	assert.NotContains(t, once, d.token, "it is seen by all who list processes")
	assert.Equal(t, http.StatusNotFound, asked(h, "HEAD", loopback, once, "").Code)
	first := asked(h, "GET", loopback, once, "")
	assert.Equal(t, http.StatusSeeOther, first.Code)
	assert.Equal(t, in, first.Header().Get("Location"))
	assert.Equal(t, http.StatusNotFound, get(once))
}

// The address that leads in once does so for a while only.
func TestOnceEnds(t *testing.T) {
	now := time.Now()
	d := newDoor(loopback)
	path := func() string { return strings.TrimPrefix(d.once(now), "http://"+loopback) }
	assert.True(t, d.opens(path(), now.Add(onceFor-time.Nanosecond)))
	assert.False(t, d.opens(path(), now.Add(onceFor)))
	assert.NotEqual(t, newDoor("").token, newDoor("").token)
}

// The same page has the same port, and another page most likely another.
func TestPorts(t *testing.T) {
	assert.Equal(t, portOf("house/a.batch"), portOf("house/a.batch"))
	assert.NotEqual(t, portOf("house/a.batch"), portOf("house/b.batch"))
	for _, key := range []string{"", "a", "b", strings.Repeat("x", 1000)} {
		assert.GreaterOrEqual(t, int(portOf(key)), firstPort)
	}
}
