package recipe

import "newmake/lang/diag"

// Learned is what was learned of one plant from its runs.
type Learned struct {
	Plant     string
	On        string // the day, as 2026-06-30
	Model     int    // edition of the models that the runs were held against
	From      []string
	Without   []Left
	Constants []LearnedConstant
	Together  []Pair
	At        diag.Span
}

// Of finds a constant by its key.
func (l *Learned) Of(key string) (LearnedConstant, bool) {
	for _, c := range l.Constants {
		if c.Key() == key {
			return c, true
		}
	}
	return LearnedConstant{}, false
}

// Left is a run that was left out.
type Left struct{ Run, Why string }

// LearnedConstant is one line: a value in SI, the range that holds it 9 times in 10, and what
// stood there before.
type LearnedConstant struct {
	ID, Of                    string
	SI, LowSI, HighSI, BaseSI float64
	At                        diag.Span
	// Text is the line behind its name, as it is to be written.
	Text string
}

// Key is the constant's, as package constants has it.
func (c LearnedConstant) Key() string { return ConstantKey(c.ID, c.Of) }

// ConstantKey is the name of a constant with whose it is.
func ConstantKey(id, of string) string {
	if of == "" {
		return id
	}
	return id + " of " + of
}

// Pair is two constants, by their keys, that are known together only.
type Pair struct {
	One, Two    [2]string // ID and of
	Correlation float64
}
