package recipe

import "newmake/lang/diag"

// RackHouse is a place of the plant where casks lie.
type RackHouse struct {
	Name        string
	Rows, Tiers int // 0: not said
	Air         YearOfAir
	Where       map[string]diag.Span // field → its line
	At          diag.Span
}

// Air is the air of a month.
type Air struct {
	TempC    float64
	Humidity float64 // relative, 0..1
}

// YearOfAir is the air of the months, January first. The zero value says that nobody
// wrote it.
type YearOfAir struct {
	Months [12]Air
	Said   bool
}

// Mean is the plain mean of the months.
func (y YearOfAir) Mean() Air {
	var m Air
	for _, a := range y.Months {
		m.TempC += a.TempC / 12
		m.Humidity += a.Humidity / 12
	}
	return m
}

// rackHouseRows are the values of a rack house.
var rackHouseRows = []row[RackHouse]{
	{Row{Path: PathOf("rows")}, func(h *RackHouse) []Cell { return cells(datum(&h.Rows)) }},
	{Row{Path: PathOf("tiers")}, func(h *RackHouse) []Cell { return cells(datum(&h.Tiers)) }},
	{Row{Path: PathOf("air")}, func(h *RackHouse) []Cell { return cells(datum(&h.Air).apart()) }},
}

// Values are those of a rack house.
func (h *RackHouse) Values() []Value {
	v := &values{}
	gather(v, owner{path: PathPlant.Child(h.Name), name: h.Name, words: h.Name, where: in(h.Where)}, rackHouseKinds, rackHouseRows, h)
	return v.out
}

// Read puts in what a text says of a rack house, apart from its air.
func (h *RackHouse) Read(text Text) { read(rackHouseRows, h, text) }

// Air is that in which casks lie where nothing else is said: of the first rack house whose
// air is written. A batch is foretold in it.
func (p *Plant) Air() YearOfAir {
	for _, h := range p.RackHouses {
		if h.Air.Said {
			return h.Air
		}
	}
	return YearOfAir{}
}
