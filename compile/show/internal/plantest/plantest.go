// Package plantest gives the tests of the renderings plans to show, and holds what
// they write against golden files.
package plantest

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/accuracy/published"
	"newmake/compile/ask/bands"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// Lantern is the invented house of the examples.
const Lantern = "examples/lantern-hollow"

// Examples are the batches of the invented house, by the names of their golden
// files.
var Examples = []struct{ Golden, Batch string }{
	{"ferry-landing", "Ferry Landing"},
	{"ferry-landing-more-rye", "Ferry Landing, more rye"},
	{"stone-ferry", "Stone Ferry"},
	{"toll-road", "Toll Road"},
	{"low-bridge", "Low Bridge"},
}

// top is the repository's folder.
func top(t testing.TB) string {
	t.Helper()
	dir, err := published.ModuleRoot()
	require.NoError(t, err)
	return dir
}

// Plan computes a batch of a house, which is named from the repository's top, with how
// sure it is. Whoever asks has it alone.
func Plan(t testing.TB, house, batch string) *plan.Plan {
	t.Helper()
	made, ok := plans.Load(house + "|" + batch)
	if !ok {
		b, p := computed(t, house, batch)
		bands.Put(p, b)
		text, err := json.Marshal(p)
		require.NoError(t, err)
		made, _ = plans.LoadOrStore(house+"|"+batch, text)
	}
	p := &plan.Plan{}
	require.NoError(t, json.Unmarshal(made.([]byte), p))
	return p
}

// plans are those that were computed, as JSON.
var plans sync.Map

// Plain is the plan without how sure it is.
func Plain(t testing.TB, house, batch string) *plan.Plan {
	t.Helper()
	_, p := computed(t, house, batch)
	return p
}

func computed(t testing.TB, house, batch string) (*recipe.Batch, *plan.Plan) {
	t.Helper()
	h, err := check.Load(filepath.Join(top(t), house), check.Options{})
	require.NoError(t, err)
	b, list := h.Batch(batch)
	require.NotNil(t, b, list.Error())
	p, said := compile.Compile(b)
	require.NotNil(t, p, said.Error())
	return b, p
}

// Golden holds a text against a golden file, or writes that anew.
func Golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join(top(t), "testdata/golden", name)
	if testflag.Update() {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "write it with: go test ./compile/show/... -update")
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("%s is not what is rendered now (-want +got); `go test ./compile/show/... -update` writes it anew:\n%s", name, diff)
	}
}

// Narrow holds that a text fits a terminal of 80 columns.
func Narrow(t *testing.T, text string) {
	t.Helper()
	for i, l := range strings.Split(text, "\n") {
		if w := diag.Width(l); w > 80 {
			t.Errorf("line %d has %d columns: %s", i+1, w, l)
		}
	}
}

// Evil is a name with terminal codes, bidirectional controls, and words longer
// than a line.
var Evil = "\x1b]8;;http://x\x07\x1b[2J\r\n\u202e<script>" + strings.Repeat("漢字", 60) + " \u009b31m"

// Hostile is a plan in which Evil stands wherever a recipe's words do.
func Hostile(t testing.TB) *plan.Plan {
	p := Plan(t, Lantern, "Ferry Landing")
	p.Batch.Name, p.Batch.Parent, p.Batch.Standard, p.Plant.Name = Evil, Evil, Evil, Evil
	for i := range p.Plant.Vessels {
		p.Plant.Vessels[i].Name = Evil
	}
	for i := range p.Bill.Lines {
		p.Bill.Lines[i].Name = Evil
	}
	for i := range p.Schedule.Steps {
		p.Schedule.Steps[i].Do.Text += Evil
		p.Schedule.Steps[i].WaitWhy = Evil
	}
	p.Notices = append(p.Notices, plan.Notice{Code: "NM0000", Severity: "warning", Summary: Evil, Help: Evil, Reason: Evil})
	p.Cost.Currency, p.Cost.Unpriced = Evil, []string{Evil}
	p.Law.Title, p.Law.Source = Evil, Evil
	return p
}

// Harmless holds that no character of a text is one that a terminal would obey.
func Harmless(t *testing.T, text string) {
	t.Helper()
	for _, r := range text {
		if r < ' ' && r != '\n' || r >= 0x7f && r < 0xa0 || r == '\u202e' {
			t.Errorf("%U is written", r)
		}
	}
}
