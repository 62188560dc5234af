package recipe

// sameStrength is how far two strengths may lie apart and still be the same
// number, written in two ways.
const sameStrength = 1e-9

// SameVolumeM3 is how far two volumes of distillate may lie apart and still be the
// same: half of 10 mL, to which a plan rounds them.
const SameVolumeM3 = 5e-6

// Weaker reports whether s is weaker than t as the two are written. Every comparison
// of a written strength with one in a law goes through it. By volume the comparison is
// the law's own, in which 40 % is 80 proof ("not less than 40 percent
// alcohol by volume (80° proof)", 27 CFR 5.143(a); proof is twice the percentage,
// 27 CFR 19.1), although % abv beside litres stands at 20 C and proof at 60 F.
//
// A strength by mass and one by volume do not compare without density tables:
// then neither is weaker, and a caller with the tables converts them to one basis first.
func (s Strength) Weaker(t Strength) bool {
	return (s.Basis == ABW) == (t.Basis == ABW) && s.Value < t.Value-sameStrength
}
