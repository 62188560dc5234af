package recipe

// Within is the range that holds a figure 9 times in 10, in SI.
type Within struct{ Low, High float64 }
