package plan

// lopsided is how many times as far a reading may be off on one side as on the other
// before both are said.
const lopsided = 1.5

// Lopsided reports whether a reading may be off much farther on one side than on the other, or
// down to nothing and less, so that one tolerance for both would say what cannot be.
func (r Reading) Lopsided() bool {
	if r.Low == nil || r.High == nil {
		return false
	}
	down, up := r.Should.Value-r.Low.Value, r.High.Value-r.Should.Value
	nothing := (r.Low.Value <= 0 || up > r.Should.Value) && r.Should.Value > 0 && (r.Should.Unit == AbvPct || r.Should.Unit == Litre)
	return nothing || max(down, up) >= lopsided*min(down, up)
}
