package quantity

// TempC is a point on the Celsius scale.
type TempC float64

// DeltaC is a distance on the Celsius scale.
type DeltaC float64

// F is the same point on the Fahrenheit scale.
func (t TempC) F() float64 { return float64(t)*9/5 + 32 }

// F is the same distance in Fahrenheit degrees.
func (d DeltaC) F() float64 { return float64(d) * 9 / 5 }

// TempFromF is the point that a Fahrenheit thermometer shows.
func TempFromF(f float64) TempC { return TempC((f - 32) * 5 / 9) }
