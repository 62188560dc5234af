package still

import "newmake/lang/recipe"

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
	drives, err := in.drives(b)
	if err != nil {
		return Run{}, err
	}
	r, err := cutStrip(in, b, func(r *runner) { r.keep, r.drives = true, drives })
	if err != nil {
		return Run{}, err
	}
	if err := r.ends(); err != nil {
		return Run{}, err
	}
	run := r.finish()
	asked(&run, in.Pace)
	run.lose(in.Still.LostFrac)
	return run, nil
}

func cutStrip(in StripInput, b *boil, how func(*runner)) (*runner, error) {
	r, err := newRunner(in.Setting, in.Wash, in.Stop, b)
	if err != nil {
		return nil, err
	}
	how(r)
	r.collect(LowWines, runsOut)
	return r, nil
}

// drives is how the low wines are driven; nothing at full heat.
func (in StripInput) drives(b *boil) ([]drive, error) {
	if in.Pace.Full || in.Pace == (recipe.FractionPace{}) {
		return nil, nil
	}
	return in.driven([]recipe.FractionPace{in.Pace}, false, func(drives []drive) ([]Fraction, error) {
		r, err := cutStrip(in, b, func(r *runner) { r.bare, r.drives = true, drives })
		if err != nil {
			return nil, err
		}
		return r.fractions, nil
	})
}
