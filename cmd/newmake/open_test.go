package main

import (
	"net"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// When the folder is gone, so is what was served of it.
func TestOpenEndsWithTheFolder(t *testing.T) {
	house := houseCopy(t)
	said := &heard{}
	ended := make(chan error, 1)
	go func() {
		ended <- watch(t.Context(), quietApp(said), filepath.Join(house, "toll-road.batch"), planFlags{open: true})
	}()
	served := regexp.MustCompile(`http://(127\.0\.0\.1:\d+)/`)
	soon(t, "it says where it serves", func() bool { return served.MatchString(said.String()) })
	require.NoError(t, os.Rename(house, house+"-moved"))
	soon(t, "the loss is said", func() bool { return strings.Contains(said.String(), "the last good plan stays") })
	select {
	case err := <-ended:
		assert.ErrorContains(t, err, "is gone")
		var e *exit
		require.ErrorAs(t, err, &e)
		assert.Equal(t, exitUsage, e.code)
	case <-time.After(20 * time.Second):
		t.Fatal("it goes on")
	}
	at := served.FindStringSubmatch(said.String())[1]
	soon(t, "nobody answers", func() bool {
		c, err := net.Dial("tcp4", at)
		if err == nil {
			c.Close()
		}
		return err != nil
	})
}
