package still

// Strip is the stripping run: everything from the first drop to the stop strength
// is low wines.
//
// It reports an error when the input cannot be a run at all (no heat, heat
// below the losses, a figure out of range); what merely goes otherwise than
// meant is in Run.Problems.
func Strip(in StripInput) (Run, error) {
	b := in.boil()
	return strip(in, b)
}

func strip(in StripInput, b *boil) (Run, error) {
	r, err := newRunner(in.Setting, in.Wash, in.Stop, b)
	if err != nil {
		return Run{}, err
	}
	r.keep = true
	r.collect(LowWines, runsOut)
	run := r.finish()
	run.lose(in.Still.LostFrac)
	return run, nil
}
