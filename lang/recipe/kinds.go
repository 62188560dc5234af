package recipe

import (
	"sync"

	"newmake/lang/quantity"
	"newmake/lang/schema"
)

// kinds are those of the numbers of a table, as the language has them: a number is of the
// kind of the slot from which it is read. They are looked up when they are first asked for.
type kinds struct {
	rows    int
	row     func(i int) (Path, []Cell)
	written []*schema.Block
	once    sync.Once
	of      [][]quantity.Kind // by the row and its cell
}

// Kinds of the tables that are written line by line.
var (
	batchKinds     = kindsOf(batchRows, &Batch{Plant: &Plant{}}, schema.Batch.Block)
	plantKinds     = kindsOf(plantRows, &Batch{Plant: &Plant{}}, schema.Language)
	vesselKinds    = kindsOf(vesselRows, &Vessel{}, vesselBlock("cooker"), vesselBlock("fermenter"), vesselBlock("still"))
	grainKinds     = kindsOf(grainRows, &Grain{}, schema.Grain.Block)
	yeastKinds     = kindsOf(yeastRows, &Yeast{}, schema.Yeast.Block)
	enzymeKinds    = kindsOf(enzymeRows, &Enzyme{}, schema.Enzyme.Block)
	caskKinds      = kindsOf(caskRows, &CaskWood{}, schema.CaskWood.Block)
	tankKinds      = kindsOf(tankRows, &Tank{}, schema.Tank.Block)
	rackHouseKinds = kindsOf(rackHouseRows, &RackHouse{}, schema.RackHouse.Block)
)

func vesselBlock(kind string) *schema.Block { return schema.Plant.Block.Find(kind).Block }

// kindsOf are the kinds of a table that is written in blocks of the language. empty holds a
// value for each row to point at.
func kindsOf[T any](rows []row[T], empty *T, written ...*schema.Block) *kinds {
	return &kinds{rows: len(rows), written: written, row: func(i int) (Path, []Cell) { return rows[i].Path, rows[i].cells(empty) }}
}

func (k *kinds) look() {
	for i := range k.rows {
		line, cells := k.row(i)
		k.of = append(k.of, kindsAt(lineAt(k.written, line), cells))
	}
}

// kindsAt are the kinds of cells that are read from a line.
func kindsAt(line *schema.Field, cells []Cell) []quantity.Kind {
	out := make([]quantity.Kind, len(cells))
	for i, c := range cells {
		if out[i] = c.Kind; line != nil && c.Kind == quantity.None && c.isNumber() {
			out[i] = line.KindOf(c.slot)
		}
	}
	return out
}

// lineAt is the line that a path names in one of some blocks; nil if there is none.
func lineAt(blocks []*schema.Block, p Path) *schema.Field {
	first, rest := p.Cut()
	for _, b := range blocks {
		switch f := b.Find(first); {
		case f == nil:
		case rest.IsZero():
			return f
		case f.Block != nil:
			return lineAt([]*schema.Block{f.Block}, rest)
		}
	}
	return nil
}

// put gives the cells of a row their kinds. Where k is nil, they have them.
func (k *kinds) put(row int, cells []Cell) []Cell {
	if k == nil {
		return cells
	}
	k.once.Do(k.look)
	all := k.of[row]
	for i := range min(len(all), len(cells)) {
		cells[i].Kind = all[i]
	}
	return cells
}
