package recipe

import "reflect"

// Text is what is written of something: a vessel, an entry of the library, a batch.
type Text interface {
	// Number is what stands in a slot of the line that a path names, "" for its first
	// number: both ends where it is a range, in SI. It is false of what is not written.
	Number(line Path, slot string) (low, high float64, ok bool)
	// Word is what stands in a slot of the line, "" for its first word or text.
	Word(line Path, slot string) (string, bool)
}

// from says that a cell is read from a slot of its line, and not from the first number
// or word there.
func (c Cell) from(slot string) Cell {
	c.slot = slot
	return c
}

// apart says that a cell is read by code of its own in package check.
func (c Cell) apart() Cell {
	c.isApart = true
	return c
}

// read puts into something what a text says of it, by the rows of its values: numbers,
// counts, words and yes or no. The second of two numbers without a slot is the upper end
// of a range. What is not written stays as it is, and so does what no row can read: a
// choice of words, a strength, a vessel.
func read[T any](rows []row[T], of *T, text Text) {
	for i := range rows {
		if rows[i].Part {
			continue
		}
		upper := false
		for _, c := range rows[i].cells(of) {
			if !c.isApart {
				c.read(text, rows[i].Path, upper)
				upper = upper || c.slot == ""
			}
		}
	}
}

func (c Cell) isNumber() bool {
	switch c.ref.(type) {
	case *float64, *[]float64:
		return true
	}
	return false
}

// read puts what a line says into the cell.
func (c Cell) read(text Text, line Path, upper bool) {
	switch x := c.ref.(type) {
	case *float64:
		if low, high, ok := text.Number(line, c.slot); ok && upper {
			*x = high
		} else if ok {
			*x = low
		}
	case *int:
		if n, _, ok := text.Number(line, c.slot); ok {
			*x = int(n)
		}
	case *bool:
		if word, ok := text.Word(line, c.slot); ok {
			*x = word == "yes"
		}
	default:
		if v := reflect.ValueOf(c.ref); v.Kind() == reflect.Pointer && v.Elem().Kind() == reflect.String {
			if word, ok := text.Word(line, c.slot); ok {
				v.Elem().SetString(word)
			}
		}
	}
}

// Read puts in what a text says of a vessel.
func (x *Vessel) Read(text Text) { read(vesselRows, x, text) }

// Read puts in what a text says of a tank.
func (t *Tank) Read(text Text) { read(tankRows, t, text) }

// Read puts in what a text says of a plant, apart from its vessels and its prices.
func (p *Plant) Read(text Text) { read(plantRows, &Batch{Plant: p}, text) }

// Read puts in what a text says of a grain.
func (g *Grain) Read(text Text) { read(grainRows, g, text) }

// Read puts in what a text says of a yeast.
func (y *Yeast) Read(text Text) { read(yeastRows, y, text) }

// Read puts in what a text says of an enzyme.
func (z *Enzyme) Read(text Text) { read(enzymeRows, z, text) }

// Read puts in what a text says of a kind of cask.
func (k *CaskWood) Read(text Text) { read(caskRows, k, text) }

// Read puts in what a text says of the values that a batch has once.
func (b *Batch) Read(text Text) { read(batchRows, b, text) }
