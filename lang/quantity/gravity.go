package quantity

// platoSource is where the curve of extract against specific gravity comes from.
const platoSource = "ASBC Methods of Analysis, Beer-3, cubic fit of Plato's table, from memory; checked against NBS Circular 440 (1942), table 114"

// The table is of apparent gravity, weighed in air; in vacuum it is lower by
// 0.0012 of its excess over 1, which is 0.00007 at 1.060 and below what a
// hydrometer shows.
var platoCurve = Curve{ToSI: gravityFromPlato, FromSI: platoFromGravity}

// platoFromGravity gives degrees Plato (% extract by weight) from specific
// gravity 20/20 C.
func platoFromGravity(sg float64) float64 {
	return -616.868 + sg*(1111.14+sg*(-630.272+sg*135.997))
}

// gravityFromPlato turns platoFromGravity round by Newton's method.
func gravityFromPlato(p float64) float64 {
	sg := 1 + p/250
	for range 8 {
		slope := 1111.14 + sg*(-2*630.272+sg*3*135.997)
		sg -= (platoFromGravity(sg) - p) / slope
	}
	return sg
}
