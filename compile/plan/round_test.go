package plan

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every float of a plan must say to how many places it is rounded; one that
// does not would be rounded to whole numbers in silence.
func TestEveryFloatStatesItsPlaces(t *testing.T) {
	seen := map[reflect.Type]bool{}
	var walk func(reflect.Type)
	walk = func(typ reflect.Type) {
		for typ.Kind() == reflect.Pointer || typ.Kind() == reflect.Slice {
			typ = typ.Elem()
		}
		if typ.Kind() != reflect.Struct || seen[typ] {
			return
		}
		seen[typ] = true
		for i := range typ.NumField() {
			f := typ.Field(i)
			if f.Type.Kind() == reflect.Float64 {
				_, ok := f.Tag.Lookup("places")
				assert.True(t, ok, "%s.%s has no places tag", typ.Name(), f.Name)
			}
			if !f.Anonymous {
				assert.NotEmpty(t, f.Tag.Get("json"), "%s.%s has no json name", typ.Name(), f.Name)
			}
			walk(f.Type)
		}
	}
	walk(reflect.TypeFor[Plan]())
	require.Greater(t, len(seen), 20)
}

func TestRoundTo(t *testing.T) {
	for _, c := range []struct {
		in     float64
		places int
		want   float64
	}{
		{1.06245, 4, 1.0625}, {1.0624499, 4, 1.0624}, {-2.5, 0, -3}, {math.Inf(1), 2, math.Inf(1)},
		// The same value with its last bits perturbed rounds the same way.
		{math.Nextafter(1.06245, 0), 4, 1.0625}, {math.Nextafter(1.06245, 2), 4, 1.0625},
	} {
		assert.Equal(t, c.want, RoundTo(c.in, c.places), "%v to %d", c.in, c.places)
	}
	assert.False(t, math.Signbit(RoundTo(-0.001, 1)), "no negative zero")
}

func TestRoundReachesEverything(t *testing.T) {
	p := Plan{
		Summary: Summary{OriginalGravitySG: 1.0624499},
		Spirit:  Run{Fractions: []Fraction{{Lot: Lot{Proof: 134.0666}}}, Feints: &Lot{AbvPct: 28.4567}},
		Schedule: Schedule{Steps: []Step{{
			Do:   Say("Heat to {}.", Of(87.7777, Celsius)),
			Read: []Reading{{Should: Of(1.06244, SG)}},
		}}},
	}
	p.Congeners = &Congeners{Curve: []CongenerPoint{{Relative: []float64{1.23456, 0.00049}}}}
	p.Round()
	assert.Equal(t, []float64{1.235, 0}, p.Congeners.Curve[0].Relative)
	assert.Equal(t, 1.0624, p.Summary.OriginalGravitySG)
	assert.Equal(t, 134.1, p.Spirit.Fractions[0].Proof)
	assert.Equal(t, 28.46, p.Spirit.Feints.AbvPct)
	assert.Equal(t, 87.8, p.Schedule.Steps[0].Do.Values[0].Value)
	assert.Equal(t, 1.0624, p.Schedule.Steps[0].Read[0].Should.Value)
}

// The names of the summary are a promise to whoever reads the JSON.
func TestSummaryNamesAreStable(t *testing.T) {
	want := []string{"originalGravitySG", "finalGravitySG", "washVolumeL", "washAbvPct", "lowWinesVolumeL",
		"lowWinesAbvPct", "heartsVolumeL", "heartsAbvPct", "heartsProofGallons", "pureAlcoholL", "feintsVolumeL",
		"feintsAbvPct", "caskEntryAbvPct", "casksFilled", "leftoverL", "mashHours", "fermentHours", "stripHours",
		"spiritHours", "yieldLPAPerTonne"}
	var got []string
	typ := reflect.TypeFor[Summary]()
	for i := range typ.NumField() {
		got = append(got, typ.Field(i).Tag.Get("json"))
	}
	assert.Equal(t, want, got)

	text, err := json.Marshal(Plan{Format: Format, Version: Version})
	require.NoError(t, err)
	assert.Contains(t, string(text), `{"format":"newmake.plan","version":"1.0","summary":{"originalGravitySG":0`)
}

// TestNoNumber: whichever number of a plan is none, its field is named.
func TestNoNumber(t *testing.T) {
	afterUpdate(t)
	tried := 0
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		p := filledPlan()
		require.Empty(t, p.NoNumber())
		eachFloat(reflect.ValueOf(p).Elem(), func(v reflect.Value, name string) {
			was := v.Float()
			v.SetFloat(bad)
			assert.Equal(t, name, p.NoNumber())
			v.SetFloat(was)
			tried++
		})
	}
	assert.Greater(t, tried, 500)
}

// filledPlan has some of everything that a plan can hold.
func filledPlan() *Plan {
	p := &Plan{}
	fill(reflect.ValueOf(p).Elem(), rand.New(rand.NewPCG(1, 2)))
	return p
}

func eachFloat(v reflect.Value, do func(v reflect.Value, name string)) { eachNamed(v, "", do) }

func eachNamed(v reflect.Value, name string, do func(v reflect.Value, name string)) {
	switch v.Kind() {
	case reflect.Float64:
		do(v, name)
	case reflect.Pointer:
		eachNamed(v.Elem(), name, do)
	case reflect.Slice:
		for i := range v.Len() {
			eachNamed(v.Index(i), name, do)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			eachNamed(v.Field(i), v.Type().Field(i).Name, do)
		}
	}
}
