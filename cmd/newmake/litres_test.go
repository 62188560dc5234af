package main

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/show/csv"
	"newmake/compile/show/formats"
	"newmake/lang/testflag"
)

// customary is what nobody reads who counts in litres. The word proof alone may stand in
// the remark of a library's figure, whose source measured in it.
var customary = regexp.MustCompile(`(?i)\bbushels?\b|[0-9] proof\b|\bgallons?\b|\bpounds?\b|27 CFR|Fahrenheit|\bgal\b`)

// customaryUnits are those whose letters mean other things in small or in capitals.
var customaryUnits = regexp.MustCompile(`[0-9] (F|PG|lb|lbs|oz|ft)\b`)

// americanTrade and scottishTrade are the trade's words that a reader of the other system has
// others for. A tank's name and a word of the language stay.
var (
	americanTrade = regexp.MustCompile(`(?i)\bstillage\b|\bspent grain\b|\bmash water\b|\bparrot\b`)
	scottishTrade = regexp.MustCompile(`(?i)\bpot[ -]ale\b|\blees\b|\bdraff\b|\bliquor\b|\bspirit safe\b`)
	ofATank       = regexp.MustCompile("(?i)\\bliquor tank|for (hot|cold) liquor|`[^`]*`|\"[^\"]*\"|(hot|cold)-liquor|draff-holds|^mash\\.(liquor|draff),|data-head=\"for\">hot liquor|, (hot|cold) liquor")
)

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
		if i%testflag.Every(2) == 0 {
			asked = append(asked, []string{"why", file, m[1], "--batch", "Grey Creel"})
		}
	}
	for _, batch := range []string{"Grey Creel", "Smoke Creel"} {
		for _, format := range formatsToRead() {
			asked = append(asked, []string{"plan", file, "--batch", batch, "--format", format})
		}
		asked = append(asked, []string{"plan", file, "--batch", batch, "--full"}, []string{"plan", file, "--batch", batch, "--screen"})
	}
	for _, table := range csv.Tables {
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
	noGallons(t, sampled(asked), exitUsage)
}

// sampled are some of what is asked: few of the whys and plans, which there are many of,
// and more of all else.
func sampled(asked [][]string) (out [][]string) {
	for i, words := range asked {
		if i%testflag.Every(16) == 0 || words[0] != "why" && words[0] != "plan" && i%testflag.Every(3) == 0 {
			out = append(out, words)
		}
	}
	return out
}

// formatsToRead are those of a plan that a person reads.
func formatsToRead() []string {
	return slices.DeleteFunc(formats.OfPlan.Names(), func(format string) bool { return format == "json" })
}

// TestAHouseInGallonsReadsItsTradesWords asks a house in gallons for what a person reads, and
// looks for words of the Scottish trade in it.
func TestAHouseInGallonsReadsItsTradesWords(t *testing.T) {
	hollow := t.TempDir()
	require.NoError(t, os.CopyFS(hollow, os.DirFS("../../examples/lantern-hollow")))
	t.Chdir(hollow)
	file := "stone-ferry.batch" // it is lautered, so it has spent grain
	asked := [][]string{{"why", file}, {"today", "--on", "2026-04-07"}, {"review", "3"}, {"season", "Spring", "--effort", "1"},
		{"diff", "Ferry Landing", "Stone Ferry"}, {"plan", file, "--full"}, {"plan", file, "--screen"}, {"plan", file, "--variants"},
		{"size", file, "--casks", "1"}, {"odds", file, "--draws", "50"}, {"plan", file, "--try", "mash.water=600 gal at 163 F"}}
	for _, number := range []string{"mash-water", "water-to-grain", "stillage", "spirit-stillage", "pot-ale", "extract", "low-wines", "hearts-share", "mash-heat"} {
		asked = append(asked, []string{"why", file, number})
	}
	for _, format := range formatsToRead() {
		asked = append(asked, []string{"plan", file, "--format", format})
	}
	for _, args := range sampled(asked) {
		code, out, said := command(args...)
		require.NotEqual(t, exitUsage, code, "%v: %s", args, said)
		require.NotEmpty(t, out+said, args)
		for _, line := range strings.Split(out+said, "\n") {
			assert.Empty(t, scottishTrade.FindString(ofATank.ReplaceAllString(line, "")), "%s: %s", strings.Join(args, " "), line)
		}
	}
}

// noGallons asks, and looks for the units of the United States in all that is answered.
func noGallons(t *testing.T, asked [][]string, not int) {
	for _, args := range asked {
		code, out, said := command(args...)
		require.NotEqual(t, not, code, "%v: %s", args, said)
		require.NotEmpty(t, out+said, args)
		for _, line := range strings.Split(out+said, "\n") {
			if slices.ContainsFunc(ofBoth, func(words string) bool { return strings.Contains(line, words) }) {
				continue
			}
			found := customary.FindString(line) + customaryUnits.FindString(line) + americanTrade.FindString(line)
			assert.Empty(t, found, "%s: %s", strings.Join(args, " "), line)
		}
	}
}

// ofBoth are lines of help and of questions that set the two systems side by side.
var ofBoth = []string{
	"proof and % abv at 60 F beside gallons", "(40 % abv is 80 proof), % vol at 20 C beside litres",
	"us for a house that counts in gallons", "stays one, for it is measured at 60 F and a % abv at 20 C",
	"of a US proof hydrometer",
}

// TestHelpInLitres: help in a house of litres is in litres.
func TestHelpInLitres(t *testing.T) {
	t.Chdir("../../examples/herring-stair")
	asked := [][]string{{"help"}, {"gauge"}, {"size"}}
	for _, c := range shownCommands(root(&app{env: func(string) string { return "" }})) {
		asked = append(asked, []string{"help", c.Name()}, []string{c.Name(), "--help"})
	}
	require.Greater(t, len(asked), 40)
	noGallons(t, asked, exitFault)
	_, out, _ := command("help", "size")
	require.NotContains(t, out, "--proof")
	require.Contains(t, out, "--lpa")
}

// TestRefusalsInLitres: what is not understood is answered in the units of the house.
func TestRefusalsInLitres(t *testing.T) {
	stair := t.TempDir()
	require.NoError(t, os.CopyFS(stair, os.DirFS("../../examples/herring-stair")))
	t.Chdir(stair)
	var asked [][]string
	for _, words := range []string{"reading 63.5", "reading 63.5 at 20 C", "400 L", "400 kg", "400 L at 70", "400 at 70 % vol", "400 L at 70 % vol reduce",
		"400 L at 70 % vol, reduce to 63", "400 L at 70 % vol, reduce to 80 % vol", "fill 250 L from 70 % vol", "fill 250 L at", "blah", "reduce to 40 % vol",
		"400 L at 70 % vol, fill 250", "400 L at 170 % vol", "400 L at 70 % vol, blend with", "reading 63.5 % vol at 300 C", "reading 63.5 % vol, solids",
		"400 L at 70 % vol, tank 12", "reading 63.5 % vol at 18 C, hydrometer", "reading 63 % abw at 20 C", "reading 63 % vol at 20 C, thermometer 1",
		"60 % vol, reduce to 40 % vol", "400 L at 60 % vol, solids 5 g/L", "400 L at 60", "400 °", "400 L at 20 degrees", "400 L at 5 %"} {
		asked = append(asked, []string{"gauge", words})
	}
	for _, tried := range []string{"bill=5", "bill=300 L", "bill.barley=lots", "bill.two-row-malt=5 L", "ferment.hold=4 m", "ferment.hold=5", "cask.entry=64", "cask.entry=x",
		"mash.water=", "mash.water=3 kg", "mash.water=}", "mash.water=#", "spirit.foreshots=12", "spirit.stop=5 %", "spirit.hearts=5", "nothing=1"} {
		asked = append(asked, []string{"plan", "grey-creel.batch", "--batch", "Grey Creel", "--try", tried})
	}
	for _, wanted := range [][]string{{"--lpa", "many"}, {"--lpa", "-5"}, {"--wash", "5"}, {"--wash", "5 kg"}, {"--casks", "0"}, {"--casks", "x"}, {"--lpa", "90000"}, {"--bottles", "9"},
		{"--cut", "hearts", "--abv", "96"}, {"--cut", "hearts", "--abv", "strong"}, {"--cut", "hearts"}, {"--cut", "tails"}, {"--two-row-malt", "5 L"}, {}} {
		asked = append(asked, append([]string{"size", "grey-creel.batch", "--batch", "Grey Creel"}, wanted...))
	}
	for _, words := range [][]string{{"why", "grey-creel.batch", "nothing"}, {"library", "steel"}, {"explain", "volum"}, {"cellar", "--on", "now"}, {"ledger", "now"}, {"review", "1"}, {"record", "1"}} {
		asked = append(asked, words)
	}
	noGallons(t, asked, exitFault)
}
