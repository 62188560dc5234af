package sheet_test

import (
	"html/template"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/measure"
	"newmake/compile/show/sheet"
)

// The short sheet has two sections, every step with its box, each danger in full once, and
// each named before the first step that has it.
func TestShort(t *testing.T) {
	for _, of := range []struct {
		batch string
		units measure.Units
	}{{"Ferry Landing", measure.US}, {"Stone Ferry", measure.SI}, {"Ferry Landing, more rye", measure.SI}} {
		p := planOf(t, of.batch)
		text := page(t, p, sheet.Options{Units: of.units, Short: true})
		assert.Equal(t, 2, strings.Count(text, "<section "), of.batch)
		for _, s := range p.Schedule.Steps {
			want := 1
			if s.Stage == "cask" {
				want = 0
			}
			assert.Equal(t, want, strings.Count(text, `id="step-`+s.ID+`"`), s.ID)
		}
		for _, c := range p.Cautions {
			assert.Equal(t, 1, strings.Count(text, template.HTMLEscapeString(of.units.Words(c.Text))), "the caution %s stands in full, once", c.Key)
			for _, s := range p.Schedule.Steps {
				if len(s.Cautions) > 0 && s.Stage != "cask" && s.Cautions[0] == c.Key {
					_, row, _ := strings.Cut(text, `id="step-`+s.ID+`"`)
					before := strings.Index(text, "</b> "+template.HTMLEscapeString(of.units.Words(c.Title))+"</span>")
					assert.Less(t, before, len(text)-len(row)+strings.Index(row, "</tbody>"), "%s is named by the step %s or before", c.Key, s.ID)
					assert.Positive(t, before)
				}
			}
		}
		for _, g := range p.Bill.Lines {
			assert.True(t, strings.Contains(text, template.HTMLEscapeString(g.Name)), g.Name)
		}
		assert.Contains(t, text, "Local code, permits and licensed practice come first")
		for _, bad := range []string{"<script", " style=", "ZgotmplZ"} {
			assert.False(t, strings.Contains(text, bad), bad)
		}
	}
}

// What decides at the end of a step is what its instruments say then: where the spirit's
// spout is turned, what it says at the cut and what the receiver holds.
func TestShortReadingsDecide(t *testing.T) {
	p := planOf(t, "Ferry Landing")
	text := page(t, p, sheet.Options{Short: true})
	_, row, found := strings.Cut(text, `id="step-spirit.hearts"`)
	assert.True(t, found)
	row, _, _ = strings.Cut(row, "</tbody>")
	assert.Equal(t, 2, strings.Count(row, ` data-blank="spirit.hearts.`))
	assert.Contains(t, row, `spout, % abv</span><b>62.0</b>`)
	assert.Contains(t, row, `receiver, gal</span>`)
	assert.NotContains(t, text, `id="step-cask.rest"`)
}

// A name that is long and words that mean harm are shown on it and never done.
func TestShortHostileText(t *testing.T) {
	text := page(t, hostile(planOf(t, "Ferry Landing")), sheet.Options{Short: true})
	for _, bad := range []string{"<script", "<img", "\x1b", "\u202e", "ZgotmplZ"} {
		assert.False(t, strings.Contains(text, bad), "%q is in the page", bad)
	}
	assert.Equal(t, 1, strings.Count(text, "</style>"))
}

// What is too long for two pages is known to be.
func TestTwoPages(t *testing.T) {
	p := planOf(t, "Ferry Landing")
	assert.True(t, sheet.TwoPages(p, measure.US))
	p.Schedule.Steps = append(append(p.Schedule.Steps, p.Schedule.Steps...), p.Schedule.Steps...)
	assert.False(t, sheet.TwoPages(p, measure.US))
}

// A danger is named again at another vessel and on another day, and not twice at one on one
// day. Only the rounds of a ferment, rows of one log, have the number alone or nothing.
func TestDangersAreNamedAgain(t *testing.T) {
	for _, batch := range []string{"Ferry Landing", "Stone Ferry"} {
		p := planOf(t, batch)
		titles := map[string]string{}
		for _, c := range p.Cautions {
			titles[c.Key] = "</b> " + template.HTMLEscapeString(measure.US.Words(c.Title)) + "</span>"
		}
		full := page(t, p, sheet.Options{})
		seen := map[[4]string]bool{}
		for _, s := range p.Schedule.Steps {
			if s.Stage == "cask" || strings.HasPrefix(s.ID, "ferment.round.") {
				continue
			}
			before, row, _ := strings.Cut(full, `id="step-`+s.ID+`"`)
			row, _, _ = strings.Cut(row, "</tbody>")
			on := before[strings.LastIndex(before, "<section "):][:40]
			for _, key := range s.Cautions {
				at := [4]string{on, key, s.Vessel, measure.Date(s.Start)}
				assert.Equal(t, !seen[at], strings.Contains(row, titles[key]), "%s, %s: %s", batch, s.ID, key)
				seen[at] = true
			}
		}
		short := page(t, p, sheet.Options{Short: true})
		for id, keys := range map[string][]string{"spirit.charge": {"vent"}, "spirit.heat": {"stillhouse", "vapour"}, "strip.charge": {"co2", "confined", "vent"}} {
			_, row, _ := strings.Cut(short, `id="step-`+id+`"`)
			row, _, _ = strings.Cut(row, "</tbody>")
			for _, key := range keys {
				assert.Contains(t, row, titles[key], "%s, short, %s", batch, id)
			}
		}
		_, row, _ := strings.Cut(short, `id="step-ferment.clean"`)
		row, _, _ = strings.Cut(row, "</tbody>")
		assert.Equal(t, 3, strings.Count(row, `<b class="bang">`), "%s: the number of each danger stands there", batch)
	}
}

// How much of the foreshots runs is said in one measure, where they run and where they end.
func TestForeshotsInOneMeasure(t *testing.T) {
	p := planOf(t, "Ferry Landing")
	for _, o := range []sheet.Options{{}, {Short: true}} {
		text := page(t, p, o)
		assert.Contains(t, text, "Foreshots: 2 qt")
		assert.Contains(t, text, "When 2 qt of foreshots have run")
	}
}
