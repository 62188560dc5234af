package constants

import "newmake/lang/recipe"

// stated is how sure the text says that a figure is.
type stated struct {
	figure, sd float64 // in SI
	why        string
}

// statedOf is how sure a figure is by the range on its line, that holds it 9 times in
// 10; nil where the line has none.
func statedOf(within map[string]recipe.Within, line string, figure float64, why string) *stated {
	w, ok := within[line]
	if !ok || figure == 0 {
		return nil
	}
	return &stated{figure, (w.High - w.Low) / (2 * NineInTen), why}
}

// ofEntry is the same of a figure of the library, with its source.
func ofEntry(e *recipe.Entry, line string, figure float64) *stated {
	why := e.Source[line]
	if why == "" {
		why = "as the house states it"
	}
	return statedOf(e.Within, line, figure, why)
}

// ofVessel is the same of a vessel.
func ofVessel(v *recipe.Vessel, line string, figure float64) *stated {
	return statedOf(v.Within, line, figure, "as the house states it")
}
