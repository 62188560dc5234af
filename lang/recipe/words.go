package recipe

// Word is the verb as it is written.
func (v MashVerb) Word() string {
	return [...]string{
		MashWater: "water", MashBackset: "backset", MashAdd: "add", MashDose: "dose", MashHeat: "heat",
		MashRest: "rest", MashCool: "cool", MashDrain: "drain", MashBoil: "boil",
		MashRecirculate: "recirculate", MashSparge: "sparge",
	}[v]
}

// Word is the kind of vessel as it is written.
func (k VesselKind) Word() string {
	return [...]string{Cooker: "cooker", Fermenter: "fermenter", Still: "still"}[k]
}
