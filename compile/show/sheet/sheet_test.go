package sheet_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"html"
	"html/template"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/internal/plantest"
	"newmake/compile/show/sheet"
	"newmake/lang/testflag"
)

// planOf is the plan of a batch of the invented house, as if from a commit.
func planOf(t testing.TB, batch string) *plan.Plan {
	t.Helper()
	p := plantest.Plan(t, plantest.Lantern, batch)
	p.Source = &plan.Source{File: "ferry-landing.batch", Revision: "0123456789ab", Hash: "ba9876543210"}
	return p
}

func page(t testing.TB, p *plan.Plan, o sheet.Options) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, sheet.HTML(&b, p, o))
	return b.String()
}

func TestGolden(t *testing.T) {
	golden(t, "ferry-landing.html", page(t, planOf(t, "Ferry Landing"), sheet.Options{}))
	golden(t, "stone-ferry-si.html", page(t, planOf(t, "Stone Ferry"), sheet.Options{Units: measure.SI}))
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("../../../testdata/golden", name)
	if testflag.Update() {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "write it with: go test ./compile/show/sheet -update")
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("%s is not what is made now (-want +got); `go test ./compile/show/sheet -update` writes it anew:\n%s", name, diff)
	}
}

var (
	styleText = regexp.MustCompile(`(?s)<style>(.*)</style>`)
	policy    = regexp.MustCompile(`Content-Security-Policy" content="([^"]*)"`)
	ids       = regexp.MustCompile(` id="([^"]*)"`)
)

func hashOf(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

// The file allows itself its style sheet and nothing else.
func TestPolicy(t *testing.T) {
	text := page(t, planOf(t, "Ferry Landing"), sheet.Options{})
	styles := styleText.FindAllStringSubmatch(text, -1)
	require.Len(t, styles, 1)
	got := html.UnescapeString(policy.FindStringSubmatch(text)[1])
	assert.Equal(t, "default-src 'none'; base-uri 'none'; form-action 'none'; style-src "+hashOf(styles[0][1]), got)
	for _, bad := range []string{"<script", "http:", "https:", " src=", " href=", " style=", "@import", "url(http"} {
		assert.False(t, strings.Contains(text, bad), bad)
	}
}

// A sheet whose text has errors since says so on the screen and on each page of paper;
// it has no script either.
func TestStale(t *testing.T) {
	p := planOf(t, "Ferry Landing")
	const words = "this is the last good sheet"
	assert.False(t, strings.Contains(page(t, p, sheet.Options{}), "last good"))
	text := page(t, p, sheet.Options{Stale: true})
	assert.True(t, strings.Contains(text, words))
	style := styleText.FindStringSubmatch(text)[1]
	assert.Contains(t, style, "@bottom-center", "it stands at the foot of each page")
	assert.False(t, strings.Contains(text, "<script"))
	got := html.UnescapeString(policy.FindStringSubmatch(text)[1])
	assert.Equal(t, "default-src 'none'; base-uri 'none'; form-action 'none'; style-src "+hashOf(style), got)
}

func TestIDsAreUnique(t *testing.T) {
	seen := map[string]bool{}
	for _, m := range ids.FindAllStringSubmatch(page(t, planOf(t, "Ferry Landing"), sheet.Options{}), -1) {
		assert.False(t, seen[m[1]], "the id %s comes twice", m[1])
		seen[m[1]] = true
	}
}

// Every step and every reading of the plan is on the sheet, with its blanks.
func TestEveryReadingHasItsBlank(t *testing.T) {
	p := planOf(t, "Ferry Landing")
	text := page(t, p, sheet.Options{})
	steps, reads := 0, 0
	for _, s := range p.Schedule.Steps {
		if s.Stage == "cask" {
			continue // the years in wood have a table of their own
		}
		steps++
		reads += len(s.Read)
		assert.True(t, strings.Contains(text, `id="step-`+s.ID+`"`), s.ID)
	}
	assert.Equal(t, steps, strings.Count(text, `<tbody class="step"`))
	assert.Equal(t, reads, strings.Count(text, `<td class="should" data-head="`))
	assert.Equal(t, reads, strings.Count(text, ` data-blank="`))
	for _, c := range p.Cautions {
		assert.True(t, strings.Contains(text, template.HTMLEscapeString(c.Text)), "the caution %s stands in full", c.Key)
	}
}

// What a recipe says is shown and never done.
func TestHostileText(t *testing.T) {
	p := hostile(planOf(t, "Ferry Landing"))
	text := page(t, p, sheet.Options{})
	for _, bad := range []string{"<script", "</style>\"", "<img", "\x1b", "\u202e", "ZgotmplZ"} {
		assert.False(t, strings.Contains(text, bad), "%q is in the page", bad)
	}
	assert.Equal(t, 1, strings.Count(text, "</style>"))
	assert.Equal(t, 1, strings.Count(text, "<style>"))
	assert.Equal(t, hashOf(styleText.FindStringSubmatch(text)[1]), strings.Fields(html.UnescapeString(policy.FindStringSubmatch(text)[1]))[7])
}

// hostile puts into every text of a plan what would do harm where it is obeyed.
func hostile(p *plan.Plan) *plan.Plan {
	evil := `<script>alert(1)</script>"]]>--></style><img src=x onerror=alert(1)>javascript:alert(1)\";}` + "\x1b[2J\u202e\n{{.}}"
	q := p.Strings(func(s string) string { return s })
	q.Batch.Name, q.Batch.Parent, q.Batch.Standard, q.Plant.Name, q.Plant.Zone = evil, evil, evil, evil, evil
	for i := range q.Plant.Vessels {
		q.Plant.Vessels[i].Name = evil
	}
	for i := range q.Bill.Lines {
		q.Bill.Lines[i].Name = evil
	}
	for i := range q.Mash.Steps {
		if len(q.Mash.Steps[i].Adds) > 0 {
			q.Mash.Steps[i].Adds = []string{evil}
		}
	}
	for i := range q.Mash.Windows {
		q.Mash.Windows[i].Name = evil
	}
	for i := range q.Schedule.Steps {
		q.Schedule.Steps[i].Do.Text += evil
		q.Schedule.Steps[i].WaitWhy = evil
	}
	for i := range q.Schedule.Vessels {
		q.Schedule.Vessels[i].Vessel = evil
	}
	q.Source = &plan.Source{File: evil, Hash: evil, Revision: evil, Changed: true}
	q.Law.Title, q.Law.Source, q.Cask.Kind = evil, evil, evil
	q.Notices = append(q.Notices, plan.Notice{Code: "NM0000", Severity: "warning", Summary: evil, Help: evil, Reason: evil})
	return q
}

// A plan that has nothing in it is a page all the same.
func TestEmptyPlan(t *testing.T) {
	assert.Contains(t, page(t, &plan.Plan{Batch: plan.Batch{Name: "x"}}, sheet.Options{}), "x")
}

func TestSameBytes(t *testing.T) {
	p := planOf(t, "Ferry Landing")
	before, err := json.Marshal(p)
	require.NoError(t, err)
	assert.Equal(t, page(t, p, sheet.Options{}), page(t, p, sheet.Options{}))
	after, err := json.Marshal(p)
	require.NoError(t, err)
	assert.JSONEq(t, string(before), string(after), "the plan is not touched")
}

func BenchmarkHTML(b *testing.B) {
	p := planOf(b, "Ferry Landing")
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		if err := sheet.HTML(&out, p, sheet.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// The cover of a variant says what it has other than its parent.
func TestVariantSaysWhatItChanges(t *testing.T) {
	p := planOf(t, "Ferry Landing, more rye")
	require.NotEmpty(t, p.Batch.Changes)
	text := html.UnescapeString(page(t, p, sheet.Options{}))
	assert.Contains(t, text, "It differs by: "+strings.Join(p.Batch.Changes, "; ")+".")
	assert.NotContains(t, page(t, planOf(t, "Ferry Landing"), sheet.Options{}), "It differs by")
}

// Each block stands once, wherever it finds room. Notices push what the batch is held
// against from the page of the wood to a last page, and the rest with it.
func TestBlocksStandOnce(t *testing.T) {
	ends := map[bool]int{}
	for _, batch := range []string{"Ferry Landing", "Stone Ferry"} {
		p := planOf(t, batch)
		for range 4 {
			text := page(t, p, sheet.Options{})
			for _, head := range []string{"<h3>How to fill in this sheet</h3>", "<h3>Words</h3>", "<caption>Tanks:", "This is not legal advice"} {
				assert.Equal(t, 1, strings.Count(text, head), "%s, with %d notices: %s", batch, len(p.Notices), head)
			}
			assert.Equal(t, min(len(p.Notices), 1), strings.Count(text, "<h3>Notices</h3>"))
			last := strings.Contains(text, `id="closing"`)
			assert.NotEqual(t, last, strings.Contains(text, "· years in wood, the law") || strings.Contains(text, `\0000b7  years in wood\00002c  the law`), "the law stands with the wood or on a last page")
			ends[last]++
			p.Notices = append(p.Notices, plan.Notice{Code: "NM0000", Severity: "note", Summary: strings.Repeat("words of a notice ", 12), Help: strings.Repeat("what to do ", 16)})
		}
	}
	assert.Positive(t, ends[true])
	assert.Positive(t, ends[false])
}
