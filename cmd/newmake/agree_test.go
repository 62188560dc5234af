package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// finding is a diagnostic as another program reads it.
type finding struct {
	Code     string `json:"code"`
	Severity string `json:"severity"`
	Summary  string `json:"summary"`
	File     string `json:"file"`
}

// found runs a command for JSON and gives its errors.
func found(t *testing.T, args ...string) (code int, errors []finding) {
	t.Helper()
	code, out, said := command(append(args, "--format", "json")...)
	require.NotEqual(t, exitFault, code, said)
	if out == "" {
		return code, nil
	}
	var r struct {
		Format      string    `json:"format"`
		Diagnostics []finding `json:"diagnostics"`
		Notices     []finding `json:"notices"`
	}
	require.NoError(t, json.Unmarshal([]byte(out), &r), out)
	for _, d := range append(r.Diagnostics, r.Notices...) {
		if d.Severity == "error" {
			errors = append(errors, d)
		}
	}
	return code, errors
}

// agree holds check of a file against plan of it, and gives the codes of plan's
// errors.
func agree(t *testing.T, file string) []string {
	t.Helper()
	planned, stops := found(t, "plan", file)
	checked, said := found(t, "check", file)
	assert.Equal(t, planned, checked, "plan and check end alike")
	var codes []string
	for _, stop := range stops {
		codes = append(codes, stop.Code)
		assert.Contains(t, said, stop, "check says what stops plan")
	}
	return codes
}

// TestCheckSaysWhatStopsPlan: a fault of the house that keeps a batch from being
// planned is said by check of the batch's file alone, and ends with 1.
func TestCheckSaysWhatStopsPlan(t *testing.T) {
	cut := func(from, to string) func(string) string {
		return func(s string) string {
			before, rest, ok := strings.Cut(s, from)
			_, after, closed := strings.Cut(rest, to)
			require.True(t, ok && closed, from)
			return before + after
		}
	}
	swap := func(old, new string) func(string) string {
		return func(s string) string {
			require.Contains(t, s, old)
			return strings.Replace(s, old, new, 1)
		}
	}
	end := func(more string) func(string) string { return func(s string) string { return s + more } }
	batch := func(s string) string { return s }
	for _, c := range []struct {
		name   string
		house  func(string) string
		recipe func(string) string
		code   string // among plan's errors; "" if nothing stops it
	}{
		{"unknown zone", swap(`"America/New_York"`, `"America/Lantern_Hollow"`), batch, "NM1156"},
		{"the machine's zone", swap(`"America/New_York"`, `"Local"`), batch, "NM1156"},
		{"elevation out of range", swap("1,150 ft", "115,000 ft"), batch, "NM0407"},
		{"elevation in the wrong unit", swap("1,150 ft", "1,150 gal"), batch, "NM0302"},
		{"elevation without a unit", swap("1,150 ft", "1,150"), batch, "NM0303"},
		{"no elevation", cut("  elevation", "\n"), batch, "NM0402"},
		{"a later edition", swap("newmake 1", "newmake 2"), batch, "NM0505"},
		{"two plants", end("\nplant \"Mill\" {\n  elevation 100 ft\n}\n"), cut("  at ", "\n"), "NM0506"},
		{"two plants of one name", end("\nplant \"Lantern Hollow\" {\n  elevation 100 ft\n}\n"), batch, "NM0202"},
		{"no plant", func(s string) string { return "newmake 1\n" }, cut("  at ", "\n"), "NM0506"},
		{"another plant", swap(`plant "Lantern Hollow"`, `plant "Lantern Hill"`), batch, "NM0201"},
		{"shift back to front", swap("07:00 to 17:00", "17:00 to 07:00"), batch, "NM0509"},
		{"shift at no hour", swap("07:00 to 17:00", "27:00 to 37:00"), batch, "NM0121"},
		{"crew of none", swap("crew       2", "crew 0"), batch, "NM0407"},
		{"an unknown word", swap("climate    temperate", "climbate temperate"), batch, "NM0203"},
		{"a missing brace", swap("climate    temperate              # the rack house", "cooker \"Other\" {"), batch, "NM0116"},
		{"a vessel without size", cut("    holds    520 gal", "\n"), batch, "NM0402"},
		{"a vessel too small", swap("holds    520 gal", "holds    52 gal"), batch, "NM0550"},
		{"a vessel of another name", swap(`cooker "Copper kettle"`, `cooker "Iron kettle"`), batch, "NM0201"},
		{"two vessels of one name", swap(`"North", "South"`, `"North", "North"`), batch, "NM0202"},
		{"a still gone", cut(`still "Spirit still"`, "}\n"), batch, "NM0201"},
		{"a price without currency", cut(`    currency`, "\n"), batch, ""},
		{"a grain that lacks its figures", end("\ngrain rye2 {\n  moisture 12 %\n}\n"), swap("rye              65 %", "rye2             65 %"), "NM0402"},
		{"a grain that lacks its figures, and that it does not use", end("\ngrain rye2 {\n  moisture 12 %\n}\n"), batch, ""},
		{"a grain with an odd figure", end("\ngrain rye {\n  moisture 112 %\n}\n"), batch, "NM0407"},
		{"a control character", swap("# the well", "# the \x00well"), batch, "NM0103"},
		{"not UTF-8", swap("# the well", "# the \xffwell"), batch, "NM0101"},
	} {
		t.Run(c.name, func(t *testing.T) {
			folder := t.TempDir()
			for name, change := range map[string]func(string) string{"house.batch": c.house, "toll-road.batch": c.recipe} {
				text, err := os.ReadFile(filepath.Join(hollow, name))
				require.NoError(t, err)
				require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(change(string(text))), 0o644))
			}
			codes := agree(t, filepath.Join(folder, "toll-road.batch"))
			if c.code == "" {
				assert.Empty(t, codes)
			} else {
				assert.Contains(t, codes, c.code)
			}
		})
	}
}

// TestCheckSaysWhatStopsVariants: a variant is stopped by what it varies, in
// whatever file that stands.
func TestCheckSaysWhatStopsVariants(t *testing.T) {
	folder, file := houseWith(t, []byte("batch \"Low Road\" from \"Toll Road\" {\n  cask {\n    rest 3 years\n  }\n}\n"))
	text, err := os.ReadFile(filepath.Join(hollow, "toll-road.batch"))
	require.NoError(t, err)
	for _, change := range [][2]string{{"790 lb", "790"}, {"rye              65 %", "rye 6 %"}, {"Copper kettle", "Pot"}, {`batch "Toll Road"`, `batch "Other Road"`}} {
		require.Contains(t, string(text), change[0])
		require.NoError(t, os.WriteFile(filepath.Join(folder, "toll-road.batch"), []byte(strings.Replace(string(text), change[0], change[1], 1)), 0o644))
		assert.NotEmpty(t, agree(t, file), change[1])
	}
}
