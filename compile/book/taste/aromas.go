package taste

import (
	"cmp"
	"slices"
	"strings"

	"newmake/lang/vocabulary"
)

// Pointed is what was said of one cause, by the words of the house's vocabulary.
type Pointed struct {
	Aroma  string   `json:"aroma"`
	Cause  string   `json:"cause"`
	Source string   `json:"source"` // where the words are from
	Words  []Spoken `json:"words"`  // the most frequent first
}

// Spoken is a word of the vocabulary that was said.
type Spoken struct {
	Word    string  `json:"word"`
	Times   int     `json:"times"` // looks and verdicts in which it stands
	Batches []Times `json:"batches"`
	// Of is what in the spirit smells so, "" if nothing is known, and Source who says it;
	// "" where that is common practice.
	Of     string `json:"of,omitempty"`
	Source string `json:"source,omitempty"`
	// Planned is the name of Of among what the hearts of the batches carry, as planned; ""
	// where that is not reckoned, or of a single batch.
	Planned string `json:"planned,omitempty"`
}

// Times is how often a word was said of a batch.
type Times struct {
	Batch string `json:"batch"` // "" where the records do not tell
	Times int    `json:"times"`
}

// points counts the words of the vocabulary in what was found, by what they point to: the
// causes of which most was said first.
func (f *Found) points(words *vocabulary.Words) {
	for i := range f.Rows {
		r := &f.Rows[i]
		if r.Words == "" || r.What == verdict {
			continue
		}
		hits := words.In(r.Words)
		if len(hits) == 0 {
			f.Unsorted++
		}
		for _, h := range hits {
			r.Aromas = append(r.Aromas, h.Word.Word)
			f.point(h, r.Batch)
		}
	}
	slices.SortStableFunc(f.Aromas, func(a, b Pointed) int { return cmp.Compare(b.times(), a.times()) })
	for i := range f.Aromas {
		slices.SortStableFunc(f.Aromas[i].Words, func(a, b Spoken) int { return cmp.Compare(b.Times, a.Times) })
	}
}

func (f *Found) point(h vocabulary.Hit, batch string) {
	i := slices.IndexFunc(f.Aromas, func(p Pointed) bool { return p.Aroma == h.Aroma.Name })
	if i < 0 {
		i = len(f.Aromas)
		f.Aromas = append(f.Aromas, Pointed{Aroma: h.Aroma.Name, Cause: h.Aroma.Cause, Source: h.Aroma.Taken})
	}
	p := &f.Aromas[i]
	j := slices.IndexFunc(p.Words, func(s Spoken) bool { return s.Word == h.Word.Word })
	if j < 0 {
		j = len(p.Words)
		source := h.Aroma.Source[h.Word.Word]
		if strings.HasPrefix(source, "common practice") {
			source = ""
		}
		p.Words = append(p.Words, Spoken{Word: h.Word.Word, Of: h.Word.Of, Source: source})
	}
	s := &p.Words[j]
	s.Times++
	k := slices.IndexFunc(s.Batches, func(t Times) bool { return t.Batch == batch })
	if k < 0 {
		k = len(s.Batches)
		s.Batches = append(s.Batches, Times{Batch: batch})
	}
	s.Batches[k].Times++
}

func (p *Pointed) times() (sum int) {
	for _, w := range p.Words {
		sum += w.Times
	}
	return sum
}

// planned finds the words' compounds among what the hearts carry, as planned.
func (f *Found) planned() {
	for i := range f.Aromas {
		for j := range f.Aromas[i].Words {
			w := &f.Aromas[i].Words[j]
			for _, c := range f.Carried {
				if w.Of != "" && strings.EqualFold(strings.ReplaceAll(c.Name, "-", " "), w.Of) {
					w.Planned = c.Name
				}
			}
		}
	}
}
