package taste

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/record"
)

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
		return Source{"More rye", "26-07"}
	}
	return Source{"Base", t.Of.Name}
}

// Each wish narrows what is found; the rows come in the order of their days.
func TestSearch(t *testing.T) {
	whats := func(w Wanted) []string {
		var out []string
		for _, r := range Search(tastings(), w, from).Rows {
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
	assert.Equal(t, "wait 6 months", Search(tastings(), Wanted{Of: "26-01"}, from).Rows[1].Words)
}

// Scores on scales with other ends are not put into one mean, nor those of two batches.
func TestMeansKeepScalesApart(t *testing.T) {
	all := tastings()
	other := look("nose", 7, "", "J")
	other.Score.High = 10
	all[1].Looks = append(all[1].Looks, other, look("nose", 5, "", "M"))
	f := Search(all, Wanted{Words: []string{"nose"}}, from)
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
		return len(Search([]*record.Tasting{one}, Wanted{}, from).Cautions)
	}
	assert.Zero(t, said(Fewest, "AMJ"))
	assert.Equal(t, 1, said(Fewest-1, "AMJ"))
	assert.Equal(t, 1, said(Fewest, "AM"))
}
