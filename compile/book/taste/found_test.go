package taste

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/record"
	"newmake/lang/vocabulary"
)

var stock = vocabulary.Of(check.Builtin().Library.Aromas)

func look(what string, score float64, words, by string) record.Look {
	return record.Look{What: what, Score: &record.Score{Value: score, High: 5}, Words: words, By: by}
}

func tastings() []*record.Tasting {
	return []*record.Tasting{
		{Of: record.Sample{Kind: record.OfCask, Name: "LH-2"}, On: record.Date{Year: 2028, Month: 2, Day: 29}, Looks: []record.Look{look("nose", 4, "Clove, oak", "M"), look("palate", 2, "thin", "A")}},
		{Of: record.Sample{Kind: record.OfHearts, Name: "26-01"}, On: record.Date{Year: 2026, Month: 3, Day: 20}, Looks: []record.Look{look("nose", 3, "oak", "A")}, Verdicts: []record.Verdict{{Word: "wait", WaitS: 182.6 * 86400, By: "A"}}},
	}
}

func from(t *record.Tasting) Source {
	if t.Of.Kind == record.OfCask {
		return Source{"More rye", "26-07", record.Date{Year: 2026, Month: 2, Day: 26}}
	}
	return Source{Batch: "Base", Run: t.Of.Name}
}

// Each wish narrows what is found; the rows come in the order of their days.
func TestSearch(t *testing.T) {
	whats := func(w Wanted) []string {
		var out []string
		for _, r := range Search(tastings(), w, stock, from).Rows {
			out = append(out, r.On+" "+r.What+" "+r.By)
		}
		return out
	}
	assert.Equal(t, []string{"2026-03-20 nose A", "2026-03-20 verdict A", "2028-02-29 nose M", "2028-02-29 palate A"}, whats(Wanted{}))
	assert.Equal(t, []string{"2026-03-20 nose A", "2028-02-29 nose M"}, whats(Wanted{Words: []string{"OAK"}}))
	assert.Equal(t, []string{"2028-02-29 nose M"}, whats(Wanted{Words: []string{"oak", "clove"}}))
	assert.Equal(t, []string{"2026-03-20 nose A", "2026-03-20 verdict A", "2028-02-29 palate A"}, whats(Wanted{By: "a"}))
	assert.Equal(t, []string{"2028-02-29 nose M", "2028-02-29 palate A"}, whats(Wanted{Batch: "more rye"}))
	assert.Equal(t, []string{"2026-03-20 nose A", "2026-03-20 verdict A"}, whats(Wanted{Of: "26-01"}))
	assert.Empty(t, whats(Wanted{Words: []string{"smoke"}}))
	assert.Equal(t, "wait 6 months", Search(tastings(), Wanted{Of: "26-01"}, stock, from).Rows[1].Words)
}

// Scores on scales with other ends are not put into one mean, nor those of two batches.
func TestMeansKeepScalesApart(t *testing.T) {
	all := tastings()
	other := look("nose", 7, "", "J")
	other.Score.High = 10
	all[1].Looks = append(all[1].Looks, other, look("nose", 5, "", "M"))
	f := Search(all, Wanted{Words: []string{"nose"}}, stock, from)
	assert.Equal(t, []Mean{
		{"Base", "hearts", "nose", 0, 5, 2, 2, 4, 3, 5}, {"Base", "hearts", "nose", 0, 10, 1, 1, 7, 7, 7}, {"More rye", "cask", "nose", 0, 5, 1, 1, 4, 4, 4},
	}, f.Means)
	assert.Len(t, f.Cautions, 2)
}

// Six scores of three people are enough for a word, five are not, and two people are not.
func TestTooFew(t *testing.T) {
	said := func(scores int, people string) int {
		one := &record.Tasting{Of: record.Sample{Kind: record.OfHearts, Name: "26-01"}}
		for i := range scores {
			one.Looks = append(one.Looks, look("nose", 3, "", string(people[i%len(people)])))
		}
		return len(Search([]*record.Tasting{one}, Wanted{}, stock, from).Cautions)
	}
	assert.Zero(t, said(fewest, "AMJ"))
	assert.Equal(t, 1, said(fewest-1, "AMJ"))
	assert.Equal(t, 1, said(fewest, "AM"))
}

// One cask over the years is one course: a row a day, the mean of who tasted that day, a
// column a scale, its words and its age. A cask that was filled anew is another.
func TestCourse(t *testing.T) {
	on := func(y int, looks ...record.Look) *record.Tasting {
		return &record.Tasting{Of: record.Sample{Kind: record.OfCask, Name: "LH-2"}, On: record.Date{Year: y, Month: 2, Day: 26}, Looks: looks}
	}
	all := []*record.Tasting{
		on(2028, look("nose", 4, "clove, no oak", "M"), look("nose", 3, "oak", "A"), look("palate", 2, "", "A")),
		on(2027, look("nose", 2, "thin", "M")),
		on(2031, look("nose", 5, "", "M")),
	}
	f := Search(all, Wanted{}, stock, func(t *record.Tasting) Source {
		if t.On.Year == 2031 {
			return Source{"Other", "30-01", record.Date{Year: 2030, Month: 1, Day: 1}}
		}
		return from(t)
	})
	require.Len(t, f.Courses, 2)
	c := f.Courses[0]
	assert.Equal(t, []Scale{{"nose", 0, 5}, {"palate", 0, 5}}, c.Scales)
	require.Len(t, c.Days, 2)
	assert.Equal(t, "2027-02-26", c.Days[0].On)
	assert.InDelta(t, 1, *c.Days[0].AgeYears, 0.001)
	assert.Equal(t, 2.0, *c.Days[0].Means[0])
	assert.Nil(t, c.Days[0].Means[1])
	assert.Equal(t, 3.5, *c.Days[1].Means[0])
	assert.Equal(t, 2.0, *c.Days[1].Means[1])
	assert.Equal(t, 2, c.Days[1].Tasters)
	assert.Equal(t, []string{"clove", "oak"}, c.Days[1].Aromas)
	assert.Equal(t, "30-01", f.Courses[1].Run)
}

// Words of the vocabulary are counted by their cause, and by batch; looks in whose words
// none stands are counted too.
func TestPointed(t *testing.T) {
	f := Search(append(tastings(), &record.Tasting{Of: record.Sample{Kind: record.OfHearts, Name: "26-01"}, On: record.Date{Year: 2027, Month: 1, Day: 1}, Looks: []record.Look{look("nose", 3, "a little solvent", "A")}}), Wanted{}, stock, from)
	var causes []string
	for _, p := range f.Aromas {
		causes = append(causes, p.Aroma)
	}
	assert.Equal(t, []string{"wood", "heads", "grain"}, causes)
	assert.Equal(t, []Times{{"Base", 1}, {"More rye", 1}}, f.Aromas[0].Words[0].Batches)
	solvent := f.Aromas[1].Words[0]
	assert.Equal(t, []any{"solvent", "ethyl acetate", ""}, []any{solvent.Word, solvent.Of, solvent.Source})
	assert.Contains(t, f.Aromas[2].Words[0].Source, "Lee et al.")
	assert.Equal(t, 1, f.Unsorted, "thin; not a verdict")
	f.Carried = []Carried{{Name: "ethyl-acetate"}}
	f.planned()
	assert.Equal(t, "ethyl-acetate", f.Aromas[1].Words[0].Planned)
}
