package main

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// customary is what nobody reads who counts in litres. The word proof alone may stand in
// the remark of a library's figure, whose source measured in it.
var customary = regexp.MustCompile(`(?i)\bbushels?\b|[0-9] proof\b|\bgallons?\b|\bpounds?\b|27 CFR|Fahrenheit|\bgal\b`)

// customaryUnits are those whose letters mean other things in small or in capitals.
var customaryUnits = regexp.MustCompile(`[0-9] (F|PG|lb|lbs|oz|ft)\b`)

// TestAHouseInLitresReadsNoGallons asks a house in litres for everything that a person
// reads, and looks for the units of the United States in it.
func TestAHouseInLitresReadsNoGallons(t *testing.T) {
	stair := t.TempDir()
	require.NoError(t, os.CopyFS(stair, os.DirFS("../../examples/herring-stair")))
	t.Chdir(stair)
	file := "grey-creel.batch"
	_, why, _ := command("why", file, "--batch", "Grey Creel")
	asked := [][]string{{"why", file, "--batch", "Grey Creel"}}
	listed := regexp.MustCompile(`(?m)^  ([a-z][a-z0-9-]+)  `).FindAllStringSubmatch(why, -1)
	require.Greater(t, len(listed), 30, "the list of what can be asked is read:\n%s", why)
	for i, m := range listed {
		if i%testflag.Every(7) == 0 {
			asked = append(asked, []string{"why", file, m[1], "--batch", "Grey Creel"})
		}
	}
	for _, batch := range []string{"Grey Creel", "Smoke Creel"} {
		for _, format := range []string{"text", "md", "html", "csv", "ics"} {
			asked = append(asked, []string{"plan", file, "--batch", batch, "--format", format})
		}
		asked = append(asked, []string{"plan", file, "--batch", batch, "--full"}, []string{"plan", file, "--batch", batch, "--screen"})
	}
	for _, table := range []string{"steps", "grain", "mash", "ferment", "strip", "spirit", "cask"} {
		asked = append(asked, []string{"plan", file, "--batch", "Grey Creel", "--format", "csv", "--table", table})
	}
	asked = append(asked,
		[]string{"plan", file, "--batch", "Grey Creel", "--variants"},
		[]string{"diff", "Grey Creel", "Smoke Creel"},
		[]string{"diff", "Grey Creel", "Smoke Creel", "--format", "md"},
		[]string{"size", file, "--batch", "Grey Creel", "--lpa", "300"},
		[]string{"size", file, "--batch", "Grey Creel", "--casks", "3"},
		[]string{"size", file, "--batch", "Grey Creel", "--cut", "hearts", "--abv", "71"},
		[]string{"odds", file, "--batch", "Grey Creel", "--draws", "50"},
		[]string{"today", "--on", "2026-04-13"},
		[]string{"today", "--on", "2026-04-20"},
		[]string{"cellar", "--on", "2030-04-20"},
		[]string{"library", "wood"},
		[]string{"gauge", "reading 63.5 % vol at 18 C"},
		[]string{"gauge", "400 L at 70 % vol at 20 C, reduce to 63.5 % vol"},
		[]string{"gauge", "fill 250 L at 63.5 % vol from 70 % vol"},
	)
	for _, args := range asked {
		code, out, said := command(args...)
		require.NotEqual(t, exitUsage, code, "%v: %s", args, said)
		require.NotEmpty(t, out+said, args)
		for _, line := range strings.Split(out+said, "\n") {
			found := customary.FindString(line) + customaryUnits.FindString(line)
			assert.Empty(t, found, "%s: %s", strings.Join(args, " "), line)
		}
	}
}
