package recipe

import (
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
)

// excused are the fields that hold no value, each with the reason.
var excused = map[string]string{
	"Cask.Air": "as the rack house has it", "RackHouse.Name": "as Vessel.Name", "RackHouse.Where": "places",
	"BillLine.Lot": "its certificate is in the grain",
	"Batch.Name":   "what the batch is called", "Batch.Units": "the units to speak in: nothing is computed otherwise", "Batch.Where": "places",
	"Batch.Parent": "the batch that it varies: what differs is in its values", "Batch.Chain": "as Parent", "Batch.Changes": "as Parent, in words",
	"Batch.Learned": "what was put into the values, kept to be said",

	"Before.EthanolKg": "a season hands it on: no text of a batch says it", "Before.WaterKg": "as EthanolKg", "Before.Run": "as EthanolKg",
	"BillLine.Share": "worked out of the weights: Resolve", "Mash.BacksetShare": "worked out of the steps: Resolve",
	"MashStep.Verb": "what the step is: steps are aligned by it", "MashStep.Path": "its place", "MashStep.ForWant": "what AsToday makes of a step", "MashStep.Grains": "where a grain goes in: grains are aligned by it",
	"Dose.Enzyme": "what the dose is: doses are aligned by it",

	"Plant.Costs": "the batch has its own, Batch.Costs", "Plant.Climate": "the cask has its own, Cask.Climate",
	"Vessel.Kind": "what the vessel is", "Vessel.Name": "what it is called: the values that refer to it do so by name",
	"Vessel.Where": "places", "Vessel.Within": "how sure its figures are: no value of its own", "Tank.Name": "as Vessel.Name", "Tank.Where": "places", "Costs.Where": "places",
	"Costs.BagKg": "how it is bought: no plan of a batch is otherwise by it", "Costs.BagsAPallet": "as BagKg",

	"Strip.Apart": "what a record says of charges that the recipe has alike", "Spirit.Apart": "as Strip.Apart",

	"Standard.Title": "a name", "Standard.Law": "a name", "Standard.Country": "a name", "Standard.Parts": "names", "Standard.Notes": "what no program can test",
	"Standard.Conditions": "what a standard asks is compared as a whole, apart from the values",
}

// lists are the fields that hold others, which are looked at one by one.
var lists = []string{"Batch.Plant", "Batch.Promises", "Batch.Models", "Bill.Lines", "BillLine.Grain", "Mash.Steps", "Ferment.Doses", "Plant.Vessels", "Plant.Tanks", "Plant.RackHouses"}

// leaves visits every field below a struct that is none itself.
func leaves(v reflect.Value, seen map[any]bool, visit func(field string, v reflect.Value)) {
	for i := range v.NumField() {
		f, x := v.Type().Field(i), v.Field(i)
		name := v.Type().Name() + "." + f.Name
		switch x.Type() {
		case reflect.TypeFor[diag.Span](), reflect.TypeFor[Entry]():
			continue // where it is written; what an entry is called, and what is said of it
		}
		if (x.Kind() != reflect.Struct || excused[name] != "") && !slices.Contains(lists, name) {
			visit(name, x)
		}
		if excused[name] != "" {
			continue
		}
		below := []reflect.Value{x}
		switch x.Kind() {
		case reflect.Slice:
			below = nil
			for i := range x.Len() {
				below = append(below, x.Index(i))
			}
		case reflect.Map:
			below = nil
			for _, k := range x.MapKeys() {
				below = append(below, x.MapIndex(k))
			}
		}
		for _, e := range below {
			if e.Kind() == reflect.Pointer && seen[e.Interface()] {
				continue
			}
			if e.Kind() == reflect.Pointer {
				seen[e.Interface()] = true
				e = e.Elem()
			}
			if e.Kind() == reflect.Struct {
				leaves(e, seen, visit)
			}
		}
	}
}

// full makes one of all that a type can hold, but for what would hold itself.
func full(v reflect.Value, within ...reflect.Type) {
	full := func(part reflect.Value) { full(part, append(slices.Clip(within), v.Type())...) }
	switch v.Kind() {
	case reflect.Pointer:
		if slices.Contains(within, v.Type().Elem()) {
			return
		}
		v.Set(reflect.New(v.Type().Elem()))
		full(v.Elem())
	case reflect.Struct:
		if c, ok := v.Addr().Interface().(*Condition); ok { // it holds a standard, which holds conditions
			*c = Condition{}
			return
		}
		for i := range v.NumField() {
			f := v.Field(i)
			if !f.CanSet() || f.Type() == reflect.TypeFor[diag.Span]() || v.Type() == reflect.TypeFor[Condition]() {
				continue // a condition may be of another standard, which has conditions
			}
			full(f)
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		full(v.Index(0))
	case reflect.Map:
		v.Set(reflect.MakeMap(v.Type()))
		if v.Type().Key().Kind() != reflect.String {
			return // of places
		}
		e := reflect.New(v.Type().Elem()).Elem()
		full(e)
		v.SetMapIndex(reflect.ValueOf("one"), e)
	case reflect.String:
		v.SetString("one")
	}
}

// fullBatch is a batch with one of everything, whose vessels are the plant's, and whose
// enzymes are one.
func fullBatch() *Batch {
	b := &Batch{}
	full(reflect.ValueOf(b).Elem())
	b.Mash.Steps[0].Path = Step(1)
	b.Ferm.Doses[0].Enzyme = b.Mash.Steps[0].Enzyme
	one := b.Plant.Vessels[0]
	b.Plant.Tanks[0].Name = "tank" // no vessel has its name
	b.Plant.RackHouses[0].Name = "rack-house"
	b.Mash.Cooker, b.Ferm.Vessels[0], b.Strip.Still, b.Spirit.Still = one, one, one, one
	return b
}

// Every leaf of a batch is a value of the table, or excused with a reason.
func TestEveryLeafIsListed(t *testing.T) {
	b := fullBatch()
	type extent struct{ from, to uintptr }
	var listed []extent
	maps := map[uintptr]bool{}
	for _, v := range b.Values() {
		for _, c := range v.Cells {
			r := reflect.ValueOf(c.ref)
			if r.Kind() == reflect.Map {
				maps[r.Pointer()] = true
				continue
			}
			listed = append(listed, extent{r.Pointer(), r.Pointer() + r.Type().Elem().Size()})
		}
	}
	used := map[string]bool{}
	count := 0
	leaves(reflect.ValueOf(b).Elem(), map[any]bool{}, func(field string, v reflect.Value) {
		count++
		used[field] = true
		switch {
		case excused[field] != "":
			return
		case v.Kind() == reflect.Map:
			assert.True(t, maps[v.Pointer()], "%s is in no row of the table (values_*.go), and not excused", field)
			return
		}
		at := v.Addr().Pointer()
		for _, x := range listed {
			if x.from <= at && at+v.Type().Size() <= x.to {
				return
			}
		}
		assert.Fail(t, field+" is in no row of the table (values_*.go), and not excused")
	})
	require.Greater(t, count, 120)
	for e := range excused {
		assert.True(t, used[e], "%s is excused, and is not there", e)
	}
}

// A value is told from all others by its path and its name, says what it is, and
// can be set without touching the batch that it is copied from.
func TestValuesAreToldApartAndSet(t *testing.T) {
	from := fullBatch()
	seen := map[Key]bool{}
	for _, v := range from.Values() {
		assert.NotEmpty(t, v.Name, v.Path)
		assert.False(t, v.Part && v.Input == "", "%s is neither compared nor nudged", v.Path)
		assert.False(t, seen[v.Key()], "two values are %v", v.Key())
		seen[v.Key()] = true
	}
	clone := from.Clone()
	require.Equal(t, from, clone)
	old, new := from.Values(), clone.Values()
	require.Equal(t, len(old), len(new))
	for i := range new {
		for k, c := range new[i].Cells {
			if x, ok := c.Is().(float64); ok {
				c.Set(x + 1)
				assert.Equal(t, x, old[i].Cells[k].Is(), "%s is shared by a batch and its clone", new[i].Path)
				assert.False(t, new[i].Same(old[i]), new[i].Path)
			}
		}
		new[i].Set(old[i])
		assert.True(t, new[i].Same(old[i]), new[i].Path)
	}
}

// Every number says of what kind it is. A promise has its kind beside it.
func TestEveryNumberHasAKind(t *testing.T) {
	for _, v := range fullBatch().Values() {
		for _, c := range v.Cells {
			if c.isNumber() && !v.Path.Within(PathPromise) {
				assert.NotZero(t, c.Kind, "%s (%s): no slot of its line says it", v.Path, v.Name)
			}
		}
	}
}

func TestPaths(t *testing.T) {
	for _, s := range []string{"bill", "mash.backset-pH", `plant."Wash still".reflux`, `plant."N. 1".holds`, "library.grain.corn.starch", "mash.step.4.to", ""} {
		assert.Equal(t, s, ParsePath(s).String())
	}
	assert.Equal(t, []string{"plant", "N. 1", "holds"}, ParsePath(`plant."N. 1".holds`).Parts())
	assert.Equal(t, ParsePath(`plant."North".holds`), ParsePath("plant.North.holds"), "quotes are for the reader")
	assert.Equal(t, PathSpirit, PathHearts.Parent())
	assert.Equal(t, "from", PathHeartsFrom.Last())
	assert.True(t, PathBill.Parent().IsZero())
	assert.True(t, PathHeartsFrom.Within(PathSpirit))
	assert.False(t, PathSpirit.Within(PathHeartsFrom))
	assert.False(t, PathSpiritStop.Within(PathStripStop))
}
