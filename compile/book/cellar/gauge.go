package cellar

import (
	"newmake/compile/made"
	"newmake/compile/matter/fluid"
	"newmake/lang/record"
)

// spirit is an amount of ethanol and water.
type spirit struct{ ethanolKg, waterKg float64 }

func (s spirit) kg() float64 { return s.ethanolKg + s.waterKg }

// wineGallons is its volume as the US gauger counts it, at 60 F.
func (s spirit) wineGallons() float64 {
	if !(s.kg() > 0) {
		return 0
	}
	return fluid.WineGallons(s.kg(), s.ethanolKg/s.kg())
}

// spiritOf is a volume of spirit at 20 C, in m3, of a strength by volume at 20 C.
func spiritOf(m3, abv float64) (spirit, bool) {
	w, err := fluid.MassFracFromABV(abv)
	if err != nil || !(m3 > 0) {
		return spirit{}, false
	}
	kg := m3 * fluid.Density(w, referenceC)
	return spirit{kg * w, kg * (1 - w)}, true
}

const referenceC = 20

// readings are those of a visit that hold, by what they are of.
func reading(v *record.Visit, what record.What) *record.Reading {
	for i := range v.Read {
		if r := &v.Read[i]; r.What == what {
			if _, ok := r.Holds(); ok {
				return r
			}
		}
	}
	return nil
}

// strength is the strength that was read on a visit, by volume at 20 C.
func strength(v *record.Visit) (abv float64, ok bool) {
	r := reading(v, record.Strength)
	if r == nil {
		return 0, false
	}
	c, ok := made.Strength(r)
	return c.SI, ok && c.SI > 0 && c.SI < 1
}

// volume is a volume that was read on a visit, in m3 at 20 C, of spirit of a strength.
func volume(v *record.Visit, what record.What, abv float64) (m3 float64, ok bool) {
	r := reading(v, what)
	if r == nil {
		return 0, false
	}
	c, ok := made.Volume(r, abv, reading(v, record.Strength))
	return c.SI, ok && c.SI > 0
}

// massKg is a mass that was read on a visit. A scale weighs in air; so it is brought to
// mass by the buoyancy of spirit and steel (fluid.MassInAirKg, backwards).
func massKg(v *record.Visit, what record.What) (kg float64, ok bool) {
	r := reading(v, what)
	if r == nil {
		return 0, false
	}
	now, _ := r.Holds()
	return now.SI, now.SI > 0
}

// filledAt is the strength at which a run filled a cask: as it was last gauged before, of
// the reduced spirit or of hearts to which no water came; or else as the rest of it was
// gauged after.
func filledAt(f record.Filling) (abv float64, ok bool) {
	past := false
	for i := range f.Run.Visits {
		v := &f.Run.Visits[i]
		if v == f.Visit {
			past = true
		}
		if past && ok {
			break
		}
		stage := f.Run.Stages[v.Stage].Name
		switch {
		case stage == record.Fill && v.Word == "reduce":
			if past {
				return 0, false
			}
			ok = false
		case stage != record.Fill && (stage != record.Spirit || v.Word != "hearts"):
			continue
		}
		if s, is := strength(v); is {
			abv, ok = s, true
		}
	}
	if s, is := strength(f.Visit); is {
		abv, ok = s, true
	}
	return abv, ok
}
