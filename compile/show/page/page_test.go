package page

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/ask/compare"
	"newmake/compile/ask/recording"
	"newmake/compile/ask/size"
	"newmake/compile/blank"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/logbook"
	"newmake/lang/record"
)

// view is a page with all that can stand on it: a run that was begun, a slide, a save.
func view(t *testing.T, name string, u measure.Units, change func(p *plan.Plan)) View {
	t.Helper()
	h, err := check.Load("../../../examples/lantern-hollow", check.Options{})
	require.NoError(t, err)
	b, list := h.Batch(name)
	require.NotNil(t, b, list)
	p, _ := compile.Compile(b)
	require.NotNil(t, p)
	planned := blank.Of(p)
	text, err := recording.Skeleton(recording.Head{Number: "26-07", Batch: name, Date: p.Batch.Start[:10]}, planned, u)
	require.NoError(t, err)
	zone := plan.Moment(p.Schedule.Start).Location()
	run, err := recording.Read("26-07.batch", text, "26-07", planned, logbook.Around{Zone: zone, Instrument: func(string) *record.Instrument { return nil }}, u)
	require.NoError(t, err)
	slide, err := size.NewSlide(b, u)
	require.NoError(t, err)
	other := *b
	other.Ferm.DurationS += 3600
	saved := compare.Batches(compare.SideOf("before", b, nil), compare.SideOf("now", &other, nil), compare.Options{Units: u, NoWhy: true})
	require.NotEmpty(t, saved.Edits)
	if change != nil {
		change(p)
	}
	return View{Plan: p, Units: u, Record: &Record{Number: "26-07", File: "runs/26-07.batch", Seen: "abc", Shown: run.Shown()},
		Slide: slide, Saved: &Saved{At: plan.Moment(p.Schedule.Start), What: saved}}
}

func made(t *testing.T, v View) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, HTML(&out, v))
	templates(t).Same(t, "page", says{v.Units}, shownOf(v), out.String())
	return out.String()
}

var batches = []string{"Ferry Landing", "Low Bridge", "Toll Road", "Stone Ferry"}

// Every blank of every example can be typed into, once, in the unit that is said of it.
func TestEveryBlank(t *testing.T) {
	for _, name := range batches {
		for _, u := range []measure.Units{measure.US, measure.SI} {
			v := view(t, name, u, nil)
			html := made(t, v)
			for _, b := range v.Plan.Blanks() {
				if b.Step == "fill.cask" || b.Step == "fill.bottle" || b.Step == "fill.soak" { // a cask has a serial: record asks for it; water to soak one is in no record
					continue
				}
				assert.Equal(t, 1, strings.Count(html, `id="blank-`+id(b.ID)+`"`), "%s: %s", name, b.ID)
			}
			assert.True(t, strings.Contains(html, `<input id="cut-at" type="range"`))
			assert.True(t, strings.Contains(html, "What the last save changed"))
			for _, s := range v.Plan.Schedule.Steps {
				assert.True(t, strings.Contains(html, `data-tick="`+s.ID+`"`))
			}
		}
	}
	oz := made(t, view(t, "Ferry Landing", measure.US, nil))
	enzyme := oz[strings.Index(oz, `id="room-used.mash.3.alpha-amylase"`):]
	assert.True(t, strings.Contains(enzyme[:strings.Index(enzyme, "</div>")], `size="7"> oz`), "what should be 5.0 oz is not typed in pounds")
}

// Elements have keys of their own, and links lead somewhere.
func TestKeys(t *testing.T) {
	for _, name := range batches {
		html := made(t, view(t, name, measure.US, nil))
		seen := map[string]bool{}
		for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(html, -1) {
			assert.False(t, seen[m[1]], "%s: %s twice", name, m[1])
			assert.NotContains(t, m[1], " ")
			seen[m[1]] = true
		}
		for _, m := range regexp.MustCompile(` (?:href="#|for="|aria-labelledby=")([^" ]*)`).FindAllStringSubmatch(html, -1) {
			assert.True(t, seen[m[1]], "%s: %s leads nowhere", name, m[1])
		}
	}
}

// Words of a house are shown, and never become part of the page.
func TestHostileWords(t *testing.T) {
	const evil = `"><script>alert(1)</script><img src=x onerror=alert(1)>'` + "\x1b]8;;\u202e"
	v := view(t, "Ferry Landing", measure.US, func(p *plan.Plan) {
		p.Batch.Name, p.Plant.Name, p.Batch.Standard = evil, evil, evil
		p.Bill.Lines[0].Name, p.Bill.Additions[0].Name = evil, evil
		for i := range p.Schedule.Steps {
			p.Schedule.Steps[i].Do.Text += evil
		}
		p.Cautions[0].Title, p.Cautions[0].Text = evil, evil
		p.Notices = append(p.Notices, plan.Notice{Severity: "warning", Summary: evil, Help: evil, Reason: evil, Code: evil})
	})
	v.Problems, v.Record.Number, v.Record.File = evil+"\n"+evil, evil, evil
	v.Record.Read["mash.5.temperature"] = recording.Said{Value: evil, When: evil, By: evil}
	v.Saved.What.Edits[0].What = evil
	html := made(t, v)
	assert.Equal(t, 1, strings.Count(html, "<script"), "its own")
	for _, bad := range []string{"<img", "\x1b", "\u202e"} {
		assert.False(t, strings.Contains(html, bad), "%q", bad)
	}
	for _, tag := range regexp.MustCompile(`<[a-z][^>]*>`).FindAllString(html, -1) {
		for _, m := range regexp.MustCompile(`\s([a-zA-Z-]+)=`).FindAllStringSubmatch(regexp.MustCompile(`"[^"]*"`).ReplaceAllString(tag, `""`), -1) {
			assert.False(t, strings.HasPrefix(m[1], "on") || m[1] == "style", "%s", tag)
		}
	}
}

// The page is made of itself and two files, and of nothing from elsewhere.
func TestFiles(t *testing.T) {
	for _, name := range []string{"page.css", "page.js"} {
		kind, content, known := Files(name)
		assert.True(t, known)
		assert.NotEmpty(t, kind)
		for _, word := range []string{"http://", "https://", "@import", "url(", "eval(", "innerHTML", "insertAdjacentHTML", "document.write", "new Function"} {
			text := strings.ReplaceAll(string(content), `createElementNS("http://www.w3.org/2000/svg"`, "")
			assert.NotContains(t, text, word, name)
		}
	}
	_, script, _ := Files("page.js")
	assert.Less(t, len(script), 20<<10, "it is to be read at a sitting")
	for _, name := range []string{"", "page.tmpl", "../page.css", "PAGE.CSS", "view.go"} {
		_, _, known := Files(name)
		assert.False(t, known, name)
	}
}

// Without a plan there is what is wrong, and nothing to type.
func TestNothingYet(t *testing.T) {
	html := made(t, View{Problems: "x.batch:3: no good\nmore"})
	assert.True(t, strings.Contains(html, "there is no plan yet"))
	assert.True(t, strings.Contains(html, "<summary>x.batch:3: no good</summary>"))
	assert.True(t, strings.Contains(html, "<title>! errors: no plan yet</title>"))
	assert.False(t, strings.Contains(html, "<form"))
	html = made(t, View{})
	assert.False(t, strings.Contains(html, "errors"))
}
