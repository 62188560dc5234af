package quantity

// TempC is a point on the Celsius scale.
type TempC float64

// DeltaC is a distance on the Celsius scale. Points can be subtracted and a
// distance added to a point; two points can't be added.
type DeltaC float64

// F is the same point on the Fahrenheit scale.
func (t TempC) F() float64 { return float64(t)*9/5 + 32 }

// K is the same point on the thermodynamic scale.
func (t TempC) K() float64 { return float64(t) + 273.15 }

// Add is the point a distance away.
func (t TempC) Add(d DeltaC) TempC { return t + TempC(d) }

// Sub is the distance from u up to t.
func (t TempC) Sub(u TempC) DeltaC { return DeltaC(t - u) }

// F is the same distance in Fahrenheit degrees.
func (d DeltaC) F() float64 { return float64(d) * 9 / 5 }

// K is the same distance in kelvins.
func (d DeltaC) K() float64 { return float64(d) }

// TempFromF is the point that a Fahrenheit thermometer shows.
func TempFromF(f float64) TempC { return TempC((f - 32) * 5 / 9) }

// TempFromK is the point of a thermodynamic temperature.
func TempFromK(k float64) TempC { return TempC(k - 273.15) }

// DeltaFromF is a distance in Fahrenheit degrees.
func DeltaFromF(f float64) DeltaC { return DeltaC(f * 5 / 9) }
