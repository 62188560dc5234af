package show_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show"
	"newmake/lang/check"
	"newmake/lang/diag"
)

var update = flag.Bool("update", false, "write the golden files anew")

// examples are the batches of the invented house, by the names of their golden
// files.
var examples = []struct{ golden, batch string }{
	{"ferry-landing", "Ferry Landing"},
	{"ferry-landing-more-rye", "Ferry Landing, more rye"},
	{"stone-ferry", "Stone Ferry"},
	{"toll-road", "Toll Road"},
	{"low-bridge", "Low Bridge"},
}

func planOf(t testing.TB, house, batch string) *plan.Plan {
	t.Helper()
	h, err := check.Load(filepath.Join("../..", house), check.Options{})
	require.NoError(t, err)
	b, list := h.Batch(batch)
	require.NotNil(t, b, list.Error())
	p, computed := compile.Compile(b)
	require.NotNil(t, p, computed.Error())
	return p
}

func text(t testing.TB, p *plan.Plan, u measure.Units) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, show.Text(&b, p, show.Options{Units: u}))
	return b.String()
}

func TestGolden(t *testing.T) {
	for _, e := range examples {
		p := planOf(t, "examples/lantern-hollow", e.batch)
		golden(t, e.golden+".txt", text(t, p, measure.US))
	}
	p := planOf(t, "examples/lantern-hollow", "Stone Ferry")
	golden(t, "stone-ferry-si.txt", text(t, p, measure.SI))

	var b bytes.Buffer
	require.NoError(t, show.JSON(&b, planOf(t, "examples/lantern-hollow", "Ferry Landing")))
	golden(t, "ferry-landing.json", b.String())
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("../../testdata/golden", name)
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "write it with: go test ./compile/show -update")
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("%s is not what is rendered now (-want +got); `go test ./compile/show -update` writes it anew:\n%s", name, diff)
	}
}

func TestNoLineIsWiderThan80Columns(t *testing.T) {
	for _, e := range examples {
		p := planOf(t, "examples/lantern-hollow", e.batch)
		narrow(t, text(t, p, measure.US))
		narrow(t, text(t, p, measure.SI))
	}
}

func narrow(t *testing.T, text string) {
	t.Helper()
	for i, l := range strings.Split(text, "\n") {
		if w := diag.Width(l); w > 80 {
			t.Errorf("line %d has %d columns: %s", i+1, w, l)
		}
	}
}

// What a recipe says is shown and never done: names with terminal codes,
// bidirectional controls, and words longer than a line.
func TestHostileNames(t *testing.T) {
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	evil := "\x1b]8;;http://x\x07\x1b[2J\r\n\u202e<script>" + strings.Repeat("漢字", 60) + " \u009b31m"
	p.Batch.Name, p.Batch.Parent, p.Batch.Style, p.House.Name = evil, evil, evil, evil
	for i := range p.House.Vessels {
		p.House.Vessels[i].Name = evil
	}
	for i := range p.Bill.Lines {
		p.Bill.Lines[i].Name = evil
	}
	for i := range p.Schedule.Steps {
		p.Schedule.Steps[i].Do.Text += evil
		p.Schedule.Steps[i].WaitWhy = evil
	}
	p.Notices = append(p.Notices, plan.Notice{Code: "NM0000", Severity: "warning", Summary: evil, Help: evil, Reason: evil})
	p.Cost.Currency, p.Cost.Unpriced = evil, []string{evil}
	p.Law.Title, p.Law.Source = evil, evil

	out := text(t, p, measure.US)
	narrow(t, out)
	for _, r := range out {
		assert.False(t, r < ' ' && r != '\n' || r >= 0x7f && r < 0xa0 || r == '\u202e', "%U is on the page", r)
	}

	var b bytes.Buffer
	require.NoError(t, show.JSON(&b, p))
	for _, r := range b.String() {
		assert.False(t, r < ' ' && r != '\n' || r >= 0x7f && r < 0xa0 || r == '\u202e', "%U is in the JSON", r)
	}
	var back plan.Plan
	require.NoError(t, json.Unmarshal(b.Bytes(), &back))
	assert.Equal(t, evil, back.Batch.Name, "JSON keeps the bytes")
}

// A plan that has nothing in it is a page all the same.
func TestEmptyPlan(t *testing.T) {
	narrow(t, text(t, &plan.Plan{}, measure.US))
}

func TestJSONRoundTrip(t *testing.T) {
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	var b bytes.Buffer
	require.NoError(t, show.JSON(&b, p))
	assert.True(t, strings.HasPrefix(b.String(), "{\n  \"format\": \"newmake.plan\",\n  \"version\": \"1.0\",\n  \"summary\": {\n    \"originalGravitySG\":"))
	assert.True(t, strings.HasSuffix(b.String(), "}\n"))
	var back plan.Plan
	d := json.NewDecoder(&b)
	d.DisallowUnknownFields()
	require.NoError(t, d.Decode(&back))
	assert.Empty(t, cmp.Diff(p, &back))
}

func TestBoldIsOnlyForATerminal(t *testing.T) {
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	assert.NotContains(t, text(t, p, measure.US), "\x1b")
	var b bytes.Buffer
	require.NoError(t, show.Text(&b, p, show.Options{Bold: true}))
	assert.Contains(t, b.String(), "\x1b[1mGRAIN BILL\x1b[0m")
}

func BenchmarkText(b *testing.B) {
	p := planOf(b, "examples/lantern-hollow", "Ferry Landing")
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		if err := show.Text(&out, p, show.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkJSON(b *testing.B) {
	p := planOf(b, "examples/lantern-hollow", "Ferry Landing")
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		if err := show.JSON(&out, p); err != nil {
			b.Fatal(err)
		}
	}
}

// What the page says of a batch that is not as most are.
func TestPageSaysHowItIs(t *testing.T) {
	text := func(t *testing.T, p *plan.Plan, u measure.Units) string { // on one line
		return strings.Join(strings.Fields(text(t, p, u)), " ")
	}
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	page := text(t, p, measure.US)
	assert.Contains(t, page, "Wash and spirit are counted at 60 F.")
	assert.Contains(t, page, "22.5 gal/56 lb")
	assert.Contains(t, page, "PG/56 lb")
	assert.NotContains(t, page, "/bu ", "a bushel of 56 lb is not the trade's")
	assert.Contains(t, page, "With feints returned, nearly all the alcohol of the low wines")
	assert.Contains(t, text(t, p, measure.SI), "Wash and spirit are counted at 20 C.")

	p.Spirit.FeintsReturned = nil
	page = text(t, p, measure.US)
	assert.Contains(t, page, "are kept apart: none go into this charge")
	assert.NotContains(t, page, "go into the next charge")

	p.Ferment.Hours = 137
	assert.Contains(t, text(t, p, measure.US), "in the fermenter 137 h 91 h asked for; it stands, and goes on,")

	p.Promises[0].Kept = false
	p.Notices = append(p.Notices, plan.Notice{Code: "NM1250", Severity: "error", Summary: "casks"}, plan.Notice{Code: "NM1211", Severity: "warning", Summary: "hot"})
	page = text(t, p, measure.US)
	assert.Contains(t, page, "1 broken promise and 1 warning below: read before the grain is milled.")
	assert.Contains(t, page, "ERRORS, WARNINGS AND NOTES")

	p.Cask.BottleAssumed = true
	assert.Contains(t, text(t, p, measure.US), "the batch states no bottling strength")
	asked := plan.Strength{AbvPct: 75.04, Proof: 150}
	p.Cask.BottleAsked = &asked
	assert.Contains(t, text(t, p, measure.US), "it is weaker than the 150.0 proof (75.0 % abv) asked for")

	p.Cask = plan.Cask{Bottles: 240, BottleL: 0.75, BottleAt: plan.Strength{AbvPct: 45.05, Proof: 90}}
	page = text(t, p, measure.US)
	assert.Contains(t, page, "BOTTLED: unaged, in no wood")
	assert.Contains(t, page, "bottles 240 of 750 mL at 90.0 proof (45.0 % abv)")
	p.Cask = plan.Cask{BottleAt: plan.Strength{AbvPct: 72, Proof: 144}}
	assert.Contains(t, text(t, p, measure.US), "KEPT: unaged, in no wood")
}
