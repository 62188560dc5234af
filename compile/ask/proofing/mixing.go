package proofing

import "fmt"

// contraction is the line of working that says how much less than spirit and
// water a mixture takes. Of weak spirit with much water it takes more: by OIML
// R 22's densities the volume grows below some 20 % vol.
func contraction(spirit, water, shrunk float64, unit string) string {
	word, amount := Contraction, shrunk
	if shrunk < 0 {
		word, amount = Expansion, -shrunk
	}
	return fmt.Sprintf("%s + %s = %s %s before mixing: %s %s %s", say(spirit), say(water), say(carry(spirit+water)), unit, word, say(amount), unit)
}

// shrinks is that as a result.
func (s *sheet) shrinks(shrunk float64, unit string) {
	if shrunk < 0 {
		s.result(Expansion, Expansion, -shrunk, 2, unit)
		return
	}
	s.result(Contraction, Contraction, shrunk, 2, unit)
}
