package library

// Report is the library as one JSON document.
type Report struct {
	Format  string  `json:"format"`
	Version string  `json:"version"`
	House   string  `json:"house,omitempty"` // whose library it is; none: the built-in one
	Entries []Entry `json:"entries"`
}

// Entry is one entry of the library.
type Entry struct {
	Kind  string `json:"kind"`
	Name  string `json:"name"`
	Doc   string `json:"doc,omitempty"`
	From  string `json:"from,omitempty"` // the entry from which it begins
	House bool   `json:"house"`          // the house has it or changes it
	Own   bool   `json:"own"`            // only the house has it
	Lines []Fact `json:"lines"`
}

// Fact is one line of an entry.
type Fact struct {
	Field string   `json:"field"`
	Text  string   `json:"text"`
	Value *float64 `json:"value,omitempty"`
	High  *float64 `json:"high,omitempty"` // of a range, which begins at value
	Unit  string   `json:"unit,omitempty"`
	// Within is the range that holds the figure 9 times in 10; in a unit of its own
	// where the line says so.
	Within *Within `json:"within,omitempty"`
	Source string  `json:"source,omitempty"`
	House  bool    `json:"house"`
	Was    string  `json:"builtIn,omitempty"` // what the built-in line says
}

// Within is how sure a figure is.
type Within struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
	Unit string  `json:"unit,omitempty"`
}

// Document is what was found as one JSON document.
func (a *Answer) Document() Report {
	r := Report{Format: "newmake.library", Version: "1.0", House: a.House, Entries: []Entry{}}
	for _, i := range a.Found {
		e := Entry{Kind: i.Kind, Name: i.Name, Doc: i.Doc, From: i.From, House: i.House, Own: i.Own, Lines: []Fact{}}
		for _, l := range i.Lines {
			f := Fact{Field: l.Field, Text: l.Text, Source: l.Source, House: l.House, Was: l.Was}
			if n := l.Figure; n != nil {
				f.Value, f.Unit = &n.Low, n.Unit
				if n.High != n.Low {
					f.High = &n.High
				}
				if w := n.Within; w != nil {
					f.Within = &Within{w.Low, w.High, w.Unit}
				}
			}
			e.Lines = append(e.Lines, f)
		}
		r.Entries = append(r.Entries, e)
	}
	return r
}
