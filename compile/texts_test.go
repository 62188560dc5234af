package compile_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/made"
	"newmake/lang/check"
	"newmake/lang/diag"
)

// What people write, and what they are told: a text of Lantern Hollow's is changed by edits,
// pairs of an old text and a new one, in which {} stands for the value that decides. It is
// checked and computed with a value at which nothing is said, and with one at which it is,
// in these words.
var texts = []struct {
	code     diag.Code
	severity diag.Severity
	batch    string
	edits    []string
	in, out  string
	says     string
}{
	{diag.CodeNoVessel, diag.Error, ferry, []string{"", "plant \"Bare\" {\n  elevation 0 m\n  still \"Pot\" {\n holds 600 L\n heats 20 kW\n }\n cooker \"Tun\" {\n holds 600 L\n heats 20 kW\n cools 20 kW\n }\n{}}\nbatch \"Bare\" from \"Ferry Landing\" {\n at \"Bare\"\n bill 100 kg {\n }\n mash in \"Tun\" {\n replace water { water 340 L }\n }\n strip in \"Pot\" {\n }\n spirit in \"Pot\" {\n }\n}\n"}, "fermenter \"F\" {\n holds 600 L\n cools 5 kW\n }\n", "", "the plant has no fermenter"},
	{diag.CodeTooMany, diag.Error, ferry, []string{"    rest     45 min", "{}    rest     45 min"}, strings.Repeat("    rest 1 min\n", 20), strings.Repeat("    rest 1 min\n", 1001), "more than 1000 steps"},
	{diag.CodeNothingToAdd, diag.Error, ferry, []string{"add      oats, rye", "add      {}"}, "oats, rye", "oats, rye\n    add all\n    add all", "every grain of the bill is in already"},
	{diag.CodeNoHeating, diag.Error, ferry, []string{"heats  130 kW  ", "heats  {}  "}, "130 kW", "0 kW", "can't heat: it has no `heats` line"},
	{diag.CodeGums, diag.Note, ferry, []string{"corn             68 %\n    oats             10 %\n    rye               8 %", "{}"}, "corn 61 %\n oats 10 %\n rye 15 %", "corn 51 %\n oats 10 %\n rye 25 %", ""},
	{diag.CodeSlowStep, diag.Warning, ferry, []string{"heat     to 190 F", "heat     to 190 F in {}"}, "2 h", "30 min", "this heat takes longer than the time written"},
	{diag.CodeAlreadyThere, diag.Warning, ferry, []string{"add      distillers-malt", "add      distillers-malt\n    cool to {}"}, "140 F", "148 F", "cool to 148 F has nothing to do"},
	{diag.CodeNothingDrawn, diag.Error, stone, []string{"285 gal at 163 F with 150 gal kept", "{} at 163 F", "195 gal at 168 F", "195 gal at 176 F"}, "200 gal", "40 gal", "nothing runs off: the grain keeps all the mash water"},
	{diag.CodeMashPH, diag.Warning, ferry, []string{"270 gal at 58 F", "215 gal at 58 F", "backset  15 %", "backset  32 %\n    backset-pH {} #"}, "4.2 pH", "3.3 pH", "the mash stands at pH 4.4"},
	{diag.CodeNoAcidWanted, diag.Note, ferry, []string{"dose     alpha-amylase", "acid lactic to {}\n    dose     alpha-amylase"}, "5.0 pH", "5.6 pH", "no acid goes in: the mash stands at pH 5.2"},
	{diag.CodePitchCold, diag.Warning, ferry, []string{"cool     to 78 F", "cool     to {}"}, "68 F", "67 F", "goes into wort at 67 F; it works from 68 F"},
	{diag.CodeYeastKilled, diag.Error, ferry, []string{"cools  by coil 14 sqft, water 4 gal/min", "", "ambient    64 F", "ambient {}"}, "50 F", "113 F", "distillers-yeast works up to 93 F"},
	{diag.CodeFermentFailed, diag.Error, ferry, []string{"", "model ferment {\n  buffer {}\n}\n"}, "30", "0", "buffer must be above nothing"},
	{diag.CodeStillFailed, diag.Error, ferry, []string{"heats            45 kW", "heats 4 kW\n    loses {}"}, "0.1 kW", "9 kW", "it never boils"},
	{diag.CodeNoDistillate, diag.Error, ferry, []string{"from 4 gal to 62 % abv", "from 1 gal to 2 gal", "stop       at 4 % abv", "stop       at {}"}, "4 % abv", "90 % abv", "the first drop is weaker than the stop"},
	{diag.CodeBareSurface, diag.Error, ferry, []string{"covered by 45 gal", "covered by {}"}, "30 gal", "120 gal", "its heating surface is covered by 120 gal"},
	{diag.CodePaceBeyond, diag.Warning, ferry, []string{"stop       at 4 % abv", "stop       at 4 % abv\n    pace {\n      hearts over {}\n    }"}, "3 h", "20 min", "at full heat, and their pace asks for 20 min"},
	{diag.CodeOddPace, diag.Note, ferry, []string{"stop       at 4 % abv", "stop       at 4 % abv\n    pace {\n      hearts over {}\n    }"}, "3 h", "14 h", "slow: a trickle"},
	{diag.CodePreheatShort, diag.Warning, ferry, []string{"agitator         yes", "agitator         yes\n    preheater {}, pot-ale at 195 F, wash to 140 F"}, "120 sqft over 60 min", "4 sqft", "and not to 140 F"},
	{diag.CodeBelowBottling, diag.Warning, ferry, []string{"bottle  750 mL at 94 proof", "bottle  750 mL at {}"}, "94 proof", "130 proof", "weaker than the bottling strength of 130.0 proof"},
	{diag.CodeCaskFailed, diag.Error, ferry, []string{"", "model cask {\n  soak-time {}\n}\n"}, "90 days", "0 days", "`soak-time` and `strength` must be above 0"},
	{diag.CodeTwoSeasons, diag.Error, ferry, []string{"standard  straight-bourbon", "standard  bottled-in-bond, straight-bourbon", "2026-03-03", "{}", "at 94 proof", "at 100 proof"}, "2026-06-02", "2026-06-26", "is distilled in one season"},
	{diag.CodeStandsDirty, diag.Note, ferry, []string{"07:00 to 17:00, tue to sat", "07:00 to {}, tue to sat", "crew       2", "crew       1"}, "17:00", "13:00", "stands"},
	{diag.CodeUnconverted, diag.Warning, ferry, []string{"    dose     alpha-amylase", "#", "", "model mash {\n  alpha-on-starch {}\n}\n"}, "10 /h", "0.5 /h", "of the starch is not converted, though it is cooked and the enzymes live"},
	{diag.CodeMashFailed, diag.Error, ferry, []string{"grain-in     66 lb/min", "grain-in {}"}, "0.2 lb/min", "0.18 lb/min", "the mash cannot be computed: mash: step 4 would take"},
	{diag.CodeEmptyStep, diag.Error, stone, []string{"285 gal at 163 F with 150 gal kept", "{} at 163 F", "195 gal at 168 F", "{} at 176 F", "150 gal at 180 F", "{} at 180 F", "drain        in 40 min for the next mash", "drain        in 40 min for the next mash\n cool to 60 F"}, "150 gal", "25 gal", "nothing in the cooker"},
	{diag.CodeNoHour, diag.Error, ferry, []string{"", "run \"99-01\" of \"Ferry Landing\" on 2026-10-30 {\n  ferment {\n    sun {} 1.034 SG\n  }\n}\n"}, "01:30 -04:00", "01:30", "comes twice"},
	{diag.CodeCorrection, diag.Error, ferry, []string{"", "run \"99-01\" of \"Ferry Landing\" on 2026-03-03 {\n  mash {\n    10:04 heat 119 F\n    corrected 10:04 heat {} to 191 F on 2026-03-05 by \"A\"\n  }\n}\n"}, "119 F", "110 F", "has `110 F` for this to correct"},
	{diag.CodeTrueAlone, diag.Error, ferry, []string{"", "run \"99-01\" of \"Ferry Landing\" on 2026-03-03 {\n  fill {\n    2026-03-11 15:40 gauge 54.1 gal, {}true 120.0 proof\n  }\n}\n"}, "121.9 proof at 65 F, ", "", "a true strength stands here without what was read"},
	{diag.CodeUndeclared, diag.Note, ferry, []string{"", "instrument H9 {\n  reads 1.000..1.070 SG by 0.001 SG at 60 F\n}\n\nrun \"99-01\" of \"Ferry Landing\" on 2026-03-03 {\n  with H9{}\n}\n"}, "", ", T9", "the house does not declare `T9`"},
}

const (
	ferry = "Ferry Landing"
	stone = "Stone Ferry"
)

func TestSaidOfTexts(t *testing.T) {
	const folder = "../examples/lantern-hollow"
	read := func(t *testing.T, name string) string {
		text, err := os.ReadFile(filepath.Join(folder, name))
		require.NoError(t, err)
		return string(text)
	}
	files := map[string]string{ferry: "ferry-landing.batch", stone: "stone-ferry.batch"}
	said := func(t *testing.T, batch string, edits []string, value string) diag.List {
		house := map[string]string{"house.batch": read(t, "house.batch"), "it.batch": read(t, files[batch]), "more.batch": ""}
		for i := 0; i < len(edits); i += 2 {
			with := strings.ReplaceAll(edits[i+1], "{}", value)
			if edits[i] == "" {
				house["more.batch"] += with
				continue
			}
			found := false
			for name, text := range house {
				found = found || strings.Contains(text, edits[i])
				house[name] = strings.Replace(text, edits[i], with, 1)
			}
			require.True(t, found, "there is no %q", edits[i])
		}
		fsys := fstest.MapFS{}
		for name, text := range house {
			fsys[name] = &fstest.MapFile{Data: []byte(text)}
		}
		h, err := check.LoadFS(fsys, "", check.Options{})
		require.NoError(t, err)
		list := h.Check()
		for _, number := range h.RunNumbers() {
			if r, _ := h.Run(number); r != nil {
				list = append(list, made.Truly(r)...)
			}
		}
		if b, _ := h.Batch(batch); b != nil && !list.HasErrors() {
			_, computed := compile.Compile(b)
			list = append(list, computed...)
		}
		return list
	}
	for _, c := range texts {
		t.Run(string(c.code), func(t *testing.T) {
			is := func(d diag.Diagnostic) bool { return d.Code == c.code }
			in := said(t, c.batch, c.edits, c.in)
			assert.False(t, slices.ContainsFunc(in, is), "at %s it is said:\n%s", c.in, in.Error())
			for _, d := range in { // a text that can't be read would say nothing
				assert.False(t, d.Severity == diag.Error && string(d.Code) < "NM0600", d.Header())
			}
			out := said(t, c.batch, c.edits, c.out)
			at := slices.IndexFunc(out, is)
			require.GreaterOrEqual(t, at, 0, "at %s it is not said:\n%s", c.out, out.Error())
			d := out[at]
			assert.Equal(t, c.severity, d.Severity, d.Header())
			assert.Contains(t, d.Summary, c.says)
			assert.False(t, d.At.IsZero(), "it has a place")
			assert.NotEmpty(t, d.Help, "it says what to do")
		})
	}
}
