package recipe

import "slices"

// mashWords are the verbs of a mash as they are written.
var mashWords = [...]string{
	MashWater: "water", MashBackset: "backset", MashAdd: "add", MashDose: "dose", MashHeat: "heat",
	MashRest: "rest", MashCool: "cool", MashDrain: "drain", MashBoil: "boil",
	MashRecirculate: "recirculate", MashSparge: "sparge",
}

// Word is the verb as it is written.
func (v MashVerb) Word() string { return mashWords[v] }

// MashVerbOf is the verb that a word writes, if it is one.
func MashVerbOf(word string) (MashVerb, bool) {
	i := slices.Index(mashWords[:], word)
	return MashVerb(max(i, 0)), i >= 0
}

// Word is the kind of vessel as it is written.
func (k VesselKind) Word() string {
	return [...]string{Cooker: "cooker", Fermenter: "fermenter", Still: "still"}[k]
}
