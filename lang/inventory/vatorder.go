package inventory

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/record"
	"newmake/lang/tree"
)

// vatsInOrder holds what is made of a vat against its day: nothing is bottled or blended of it
// before, and no vat is made of itself.
func vatsInOrder(c *Inventory, diags *diag.List) {
	vats := map[string]*record.Vat{}
	for _, v := range c.Vats {
		vats[tree.Key(v.Name)] = v
	}
	for _, b := range c.Bottlings {
		if v := vats[tree.Key(b.Of)]; v != nil && b.On.Compare(v.On) < 0 {
			diags.Add(tooSoon(b.At, v, fmt.Sprintf("vat %s is of %s, and is bottled on %s", v.Name, v.On, b.On)))
		}
	}
	// into says whether a vat is reached from another, by what went into it.
	var into func(from, to *record.Vat, seen map[*record.Vat]bool) bool
	into = func(from, to *record.Vat, seen map[*record.Vat]bool) bool {
		if from == to {
			return true
		}
		if seen[from] {
			return false
		}
		seen[from] = true
		for i := range from.Visits {
			if s := ofVat(&from.Visits[i], vats); s != nil && into(s, to, seen) {
				return true
			}
		}
		return false
	}
	for _, v := range c.Vats {
		for i := range v.Visits {
			f := &v.Visits[i]
			s := ofVat(f, vats)
			if s == nil {
				continue
			}
			on := f.When.Date
			if on.IsZero() {
				on = v.On
			}
			switch {
			case into(s, v, map[*record.Vat]bool{}):
				diags.Add(tooSoon(f.At, s, fmt.Sprintf("vat %s is made of vat %s, which is made of it", v.Name, s.Name)))
			case on.Compare(s.On) < 0:
				diags.Add(tooSoon(f.At, s, fmt.Sprintf("vat %s is of %s, and goes into vat %s on %s", s.Name, s.On, v.Name, on)))
			}
		}
	}
}

// ofVat is the vat that a line takes from, nil if it takes from none.
func ofVat(f *record.Visit, vats map[string]*record.Vat) *record.Vat {
	if f.Word != "from" || f.Of != "vat" {
		return nil
	}
	return vats[tree.Key(f.From)]
}

func tooSoon(at diag.Span, v *record.Vat, summary string) diag.Diagnostic {
	return diag.Diagnostic{Code: diag.CodeTooSoon, At: at, Summary: summary,
		Related: []diag.Related{{At: v.At, Text: "the vat is here"}},
		Help:    "look at the names and the dates: a vat is made first, and bottled or blended after"}
}
