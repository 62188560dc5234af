package record

import "newmake/lang/diag"

// Life is a cask from its fill to its end: what all texts of a house say of it. A cask
// that was emptied and filled again has several.
type Life struct {
	Serial string
	Cask   *Cask // its declaration; nil if it is known only from its fill
	Fills  []Filling
	Events []Visit // in the order of their days, of its own block and of rounds
	Ends   []End   // in the order of their days: parts that went, and the last of it
}

// Filling is a run, or one of several, that filled a cask.
type Filling struct {
	Run   *Run
	Visit *Visit
}

// On is the day of a fill.
func (f Filling) On() Date { return f.Visit.When.Date }

// End is what became of a cask, or of a part of it.
type End struct {
	On    Date
	Part  bool   // some of it stays
	Vat   *Vat   // nil if it did not go into a vat
	Visit *Visit // the line that says so
	Word  string // from, emptied, destroyed, bottled
}

// Filled is the day of the first fill, with which the life began; zero if no run recorded
// one.
func (l *Life) Filled() Date {
	if len(l.Fills) == 0 {
		return Date{}
	}
	return l.Fills[0].On()
}

// Over is the end of it all, nil while there is something in the cask.
func (l *Life) Over() *End {
	if n := len(l.Ends); n > 0 && !l.Ends[n-1].Part {
		return &l.Ends[n-1]
	}
	return nil
}

// Place is where it lies on a day: the last place that was written by then, with row and
// tier, "" if none was.
func (l *Life) Place(on Date) (place string, spot []string) {
	for i := range l.Events {
		if v := &l.Events[i]; v.Word == "to" && v.When.Date.Compare(on) <= 0 {
			place, spot = v.To, v.Names
		}
	}
	return place, spot
}

// At is where the texts begin to tell of it: its fill, its declaration, or what was read
// or drawn of it where neither is written.
func (l *Life) At() diag.Span {
	switch {
	case len(l.Fills) > 0:
		return l.Fills[0].Visit.At
	case l.Cask != nil:
		return l.Cask.At
	case len(l.Events) > 0:
		return l.Events[0].At
	case len(l.Ends) > 0:
		return l.Ends[0].Visit.At
	}
	return diag.Span{}
}
