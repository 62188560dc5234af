package recipe

import "slices"

// Resolve works out what is written as a share of something else: each line's
// share of the bill, enzymes that are dosed by the weight of grain, and backset
// that is a share of all the liquor. Whoever changes a weight or a volume of a
// batch calls it, and the shares stay what they were written as.
func (b *Batch) Resolve() {
	total := b.Bill.TotalKg
	for i := range b.Bill.Lines {
		if l := &b.Bill.Lines[i]; total > 0 {
			l.Share = l.MassKg / total
		}
	}
	for i := range b.Mash.Steps {
		if s := &b.Mash.Steps[i]; s.Verb == MashDose && s.Share > 0 {
			s.MassKg = s.Share * total
		}
	}
	for i := range b.Ferm.Doses {
		if d := &b.Ferm.Doses[i]; d.Share > 0 {
			d.MassKg = d.Share * total
		}
	}
	b.Mash.resolveBackset()
}

// WortSteps are the steps of a mash whose liquor comes to the fermenter: all but those
// after the last drain of the worts.
func WortSteps(steps []MashStep) []MashStep {
	for i, s := range slices.Backward(steps) {
		switch {
		case s.Verb == MashDrain && s.NextMash:
			for j, t := range slices.Backward(steps[:i]) {
				if t.Verb == MashDrain && !t.NextMash || t.Verb == MashSparge {
					return steps[:j+1]
				}
			}
		case s.Verb == MashDrain || s.Verb == MashSparge:
			return steps
		}
	}
	return steps
}

// AsToday is a batch as it is worked on the day: where the house has no backset
// yet, or has kept no last water of a mash, water goes in its place.
func (b *Batch) AsToday() *Batch {
	if !b.Today.NoBackset && !b.Today.NoKept {
		return b
	}
	c := *b
	c.Mash.Steps = slices.Clone(b.Mash.Steps)
	for i := range c.Mash.Steps {
		s := &c.Mash.Steps[i]
		if s.Verb == MashBackset && b.Today.NoBackset {
			s.Verb, s.Share, s.ForWant = MashWater, 0, true
		}
		if b.Today.NoKept {
			s.KeptM3 = 0
		}
	}
	if b.Today.NoBackset {
		c.Mash.BacksetShare = 0
	}
	return &c
}

// resolveBackset turns shares of all the liquor into volumes.
func (m *Mash) resolveBackset() {
	var share, rest float64
	for _, s := range m.Steps {
		switch {
		case s.Verb == MashBackset && s.Share > 0:
			share += s.Share
		case s.Verb == MashBackset || s.Verb == MashWater:
			rest += s.VolumeM3
		}
	}
	if share >= 1 {
		return // the checker says so
	}
	all := rest / (1 - share)
	var backset float64
	for i := range m.Steps {
		if s := &m.Steps[i]; s.Verb == MashBackset {
			if s.Share > 0 {
				s.VolumeM3 = s.Share * all
			}
			backset += s.VolumeM3
		}
	}
	if all > 0 {
		m.BacksetShare = backset / all
	}
}
