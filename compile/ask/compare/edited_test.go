package compare_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/compare"
	"newmake/compile/measure"
	"newmake/lang/check"
	"newmake/lang/edit"
)

const lantern = "../../../examples/lantern-hollow"

// A value that is changed in the text, by its path, is found again as the edit
// that it is: package lang/edit and this one hold one another to their word.
func TestWhatIsEditedInTheTextIsFound(t *testing.T) {
	for _, c := range []struct {
		batch   string
		changes []string
		want    []string
	}{
		{"Ferry Landing", []string{"bill.rye=14 %", "bill.oats=4 %"}, []string{"rye for oats, 6 points"}},
		{"Ferry Landing", []string{"bill=900 lb"}, []string{"bill 110 lb more"}},
		{"Ferry Landing", []string{"mash.water=280 gal"}, []string{"water 10 gal more"}},
		{"Ferry Landing", []string{"mash.backset=10 %"}, []string{"backset 5 points less"}},
		{"Ferry Landing", []string{"mash.heat=195 F"}, []string{"heat 5 F hotter"}},
		{"Ferry Landing", []string{"mash.heat=to 195 F"}, []string{"heat 5 F hotter"}},
		{"Ferry Landing", []string{"mash.rest.2=30 min"}, []string{"rest 10 min longer"}},
		{"Ferry Landing", []string{"mash.step.5.to=195 F"}, []string{"heat 5 F hotter"}},
		{"Ferry Landing", []string{"mash.dose.alpha-amylase=0.08 % of grain"}, []string{"more alpha-amylase"}},
		{"Ferry Landing", []string{"mash.water.at=150 F"}, []string{"water 92 F hotter"}},
		{"Ferry Landing", []string{"mash.backset-pH=3.7 pH"}, []string{"backset pH 3.7 pH"}},
		{"Ferry Landing", []string{"ferment.hold=80..90 F"}, []string{"hold 80..90 F"}},
		{"Ferry Landing", []string{"ferment.pitch=0.8 g/L"}, []string{"pitch 0.8 g/L"}},
		{"Ferry Landing", []string{"ferment.dose=glucoamylase"}, []string{"glucoamylase added to the ferment"}},
		{"Ferry Landing", []string{"strip.stop=1 % abv"}, []string{"stripping run's stop 1 % abv"}},
		{"Ferry Landing", []string{"strip.charges=2"}, []string{"stripping run 2 charges"}},
		{"Ferry Landing", []string{"spirit.hearts.to=60 % abv"}, []string{"hearts to 60 % abv"}},
		{"Ferry Landing", []string{"spirit.hearts=from 3 gal to 61 % abv"}, []string{"hearts from 3 gal", "hearts to 61 % abv"}},
		{"Ferry Landing", []string{"cask.entry=115 proof"}, []string{"entry 115 proof"}},
		{"Ferry Landing", []string{"cask.fill=30 gal"}, []string{"cask 30 gal new charred-oak char 3"}},
		{"Ferry Landing", []string{"cask.climate=hot"}, nil},
		{"Ferry Landing", []string{"plant.water=48 F"}, []string{"plant's water 48 F"}},
		{"Ferry Landing", []string{`plant."Wash still".reflux=8 %`}, []string{"Wash still reflux 8 %"}},
		{"Ferry Landing", []string{"plant.costs.corn=0.20 USD/lb"}, []string{"prices"}},
		{"Ferry Landing", []string{"library.grain.corn.moisture=12 %"}, []string{"grain corn in the library"}},
		{"Ferry Landing", []string{"start=2026-03-04 07:00"}, []string{"start 2026-03-04 07:00"}},
		// A variant: its own lines, and those that it has of its parent.
		{"Ferry Landing, more rye", []string{"bill.rye=10 %", "bill.oats=8 %"}, []string{"oats for rye, 4 points"}},
		{"Ferry Landing, more rye", []string{"bill=900 lb"}, []string{"bill 110 lb more"}},
		{"Ferry Landing, more rye", []string{"cask.entry=115 proof"}, []string{"entry 115 proof"}},
		// A bill in weights.
		{"Low Bridge", []string{"bill.corn=620 lb"}, []string{"corn 30 lb more"}},
	} {
		t.Run(strings.Join(c.changes, "; "), func(t *testing.T) {
			h, err := check.Load(lantern, check.Options{})
			require.NoError(t, err)
			before, list := h.Batch(c.batch)
			require.NotNil(t, before, list.Error())
			var changes []edit.Change
			for _, s := range c.changes {
				x, err := edit.Parse(s)
				require.NoError(t, err)
				changes = append(changes, x)
			}
			r, err := edit.Apply(h, before, changes)
			require.NoError(t, err)
			assert.NotEmpty(t, r.Lines)
			h, err = r.House(lantern, nil)
			require.NoError(t, err)
			after, list := h.Batch(c.batch)
			require.NotNil(t, after, list.Error())
			var what []string
			for _, e := range compare.Find(before, after, measure.US).Edits {
				what = append(what, e.What)
			}
			if c.want != nil {
				assert.Equal(t, c.want, what)
			}
		})
	}
}
