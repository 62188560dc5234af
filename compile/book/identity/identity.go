// Package identity says what a vat or a bottling is, by the records: how long the youngest
// spirit in it was in wood, which standards of identity it meets, and what keeps it from
// another. A plan is held against its standard by package law, and so is each spirit here,
// as it was really made; what is mixed must meet what is asked in every part.
//
// This is no legal advice.
package identity

import (
	"fmt"
	"slices"
	"strings"

	"newmake/compile/book/trace"
	"newmake/compile/law"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/inventory"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// Identity is what a vat or a bottling is.
type Identity struct {
	Kind      trace.Kind `json:"kind"` // vat or bottling
	Name      string     `json:"name"`
	On        string     `json:"date"`
	Youngest  *Age       `json:"youngest,omitempty"` // none where nothing tells of all that is in it
	Spirits   []Part     `json:"spirits"`
	SoldAs    []string   `json:"soldAs"`           // titles of standards
	ByBatches bool       `json:"soldAsByBatches"`  // nobody wrote what it is sold as: its batches agree in it
	Claims    []Verdict  `json:"claims"`           // what it is sold as, or its batches have it made as
	Also      []string   `json:"alsoMeets"`        // titles of other standards of the same law
	Near      []Verdict  `json:"near"`             // of the same law, where years, season or the strength of the bottle alone are wanting
	Label     []string   `json:"label"`            // what the label has to say
	Unwritten []string   `json:"notToldByRecords"` // of what is in it
	File      string     `json:"file,omitempty"`
	Line      int        `json:"line,omitempty"`

	also []string // names of Also
}

// Part is spirit of one run in it.
type Part struct {
	Run      string   `json:"run,omitempty"` // "" where nothing leads on to one
	Batch    string   `json:"batch,omitempty"`
	Standard string   `json:"standard,omitempty"` // of the batch
	Casks    []string `json:"casks"`
	Age      string   `json:"age"`                // in wood, by the calendar
	SharePct float64  `json:"sharePct,omitempty"` // of the alcohol, where it is known
}

// Verdict is how it stands against one standard.
type Verdict struct {
	Name    string           `json:"name"`
	Title   string           `json:"title"`
	Law     string           `json:"law"`
	Met     string           `json:"met"` // as a condition's
	Missing []plan.Condition `json:"missing"`
	// OldEnough is the day on which the last of it was in wood as long as the standard asks, or
	// would have been, had it not left the wood; "" where it asks for no years.
	OldEnough  string           `json:"oldEnough,omitempty"`
	NotTold    []string         `json:"notToldByRecords"`
	Conditions []plan.Condition `json:"conditions"`

	near bool // nothing but years, season or the strength of the bottle is wanting
}

// House is what is asked of a house.
type House struct {
	Texts     *inventory.Inventory
	Batch     func(name string) *recipe.Batch // nil where it cannot be read
	Wood      func(name string) *recipe.CaskWood
	Standards []*recipe.Standard // all that are known, in the order in which they are listed
	// Amount is how much alcohol a line of the records moved, 0 where nobody knows.
	Amount func(at diag.Span) float64
}

// HouseOf asks a house for what is needed. amount is how much alcohol a line moved.
func HouseOf(h *check.House, texts *inventory.Inventory, amount func(at diag.Span) float64) House {
	library := h.Library()
	o := House{Texts: texts, Amount: amount,
		Batch: func(name string) *recipe.Batch { b, _ := h.Batch(name); return b },
		Wood:  func(name string) *recipe.CaskWood { return library.Woods[name] },
	}
	for _, s := range library.Standards {
		o.Standards = append(o.Standards, s)
	}
	slices.SortFunc(o.Standards, func(a, b *recipe.Standard) int { return strings.Compare(a.Name, b.Name) })
	return o
}

// Of is what vats and bottlings of a house are, in the order of its texts, the vats first:
// those that are wanted.
func Of(h House, wanted func(*trace.Blend) bool) []Identity {
	out := []Identity{}
	j := &judging{House: h}
	for _, b := range trace.Blends(h.Texts, h.Amount) {
		if wanted(&b) {
			out = append(out, j.of(b))
		}
	}
	return out
}

// Traced is a trace, and what the vats and bottlings are that were asked for.
type Traced struct {
	*trace.Trace
	Is []Identity `json:"is"`
}

// judging holds blends against standards.
type judging struct {
	House
	bottle bottle // of the blend at hand
}

// bottle is how strong it was bottled, by its label, or how strong it is in the vat. The
// strength is zero where nobody wrote it.
type bottle struct {
	at  recipe.Strength
	vat bool
}

// spirit is a spirit with what is known of it.
type spirit struct {
	trace.Spirit
	age   Age
	batch *recipe.Batch // as it was made, nil where the recipe cannot be read
	stays []recipe.Cask // the casks, each as the recipe would have it; one of no wood where it saw none
	off   plan.Lot      // as it came off the still, zero where nobody wrote it
	days  law.Days      // on which it was distilled
	loose bool          // the days only bound it
}

func (j *judging) of(b trace.Blend) Identity {
	o := Identity{Kind: b.Kind, Name: b.Name, On: b.On.String(), Spirits: []Part{}, SoldAs: []string{}, Claims: []Verdict{}, Also: []string{}, Near: []Verdict{}, Label: []string{}, Unwritten: []string{}}
	o.File, o.Line = place(b.At)
	j.bottle = bottleOf(b)
	var in []spirit
	for _, s := range b.Spirits {
		if s.Run == nil {
			o.Unwritten = append(o.Unwritten, s.Why)
		}
		x := j.spirit(s)
		if s.Run != nil && x.batch == nil {
			o.Unwritten = append(o.Unwritten, fmt.Sprintf("batch %q of run %s cannot be read", s.Run.Batch, s.Run.Number))
		}
		in = append(in, x)
		o.Spirits = append(o.Spirits, x.part(b.Shares))
	}
	o.Youngest = youngest(in)
	names, byBatches := j.claims(b, in)
	o.ByBatches = byBatches
	lawOf := ""
	for _, name := range names {
		s := j.standard(name)
		if s == nil {
			continue
		}
		o.SoldAs = append(o.SoldAs, s.Title)
		o.Claims = append(o.Claims, j.verdict(s, in, b.Shares))
		if lawOf == "" {
			lawOf = family(s)
		}
		for _, l := range labels(s, in) {
			if !slices.Contains(o.Label, l) {
				o.Label = append(o.Label, l)
			}
		}
	}
	j.others(&o, lawOf, names, in, b.Shares)
	return o
}

// claims are the names of the standards that it is sold as; where nobody wrote it, those of
// its batches where they agree.
func (j *judging) claims(b trace.Blend, in []spirit) (names []string, byBatches bool) {
	if b.Bottling != nil && len(b.Bottling.Standards) > 0 {
		return b.Bottling.Standards, false
	}
	for i, s := range in {
		if s.batch == nil || s.batch.Standard == nil {
			return nil, false
		}
		own := partsOf(s.batch.Standard)
		if i == 0 {
			names = own
		}
		if !slices.Equal(own, names) {
			return nil, false
		}
	}
	return names, len(names) > 0
}

// unproved says that a standard asks for more strength off the still than the others allow, and
// nobody wrote how strong it was: it may be that, or what they are, and not both.
func unproved(s *recipe.Standard, v Verdict) bool {
	for i := range s.Conditions {
		if s.Conditions[i].Test == recipe.OffStillOver && v.Conditions[i].Found == law.Unwritten {
			return true
		}
	}
	return false
}

// others are the standards of the same law that are met as well, or nearly. A mixture of
// several kinds is held against the standards of blends, and what is of one kind is not.
func (j *judging) others(o *Identity, of string, claimed []string, in []spirit, shares bool) {
	kinds := map[string]bool{}
	for _, s := range in {
		if s.batch == nil {
			return
		}
		kind := ""
		if s.batch.Standard != nil {
			kind = s.batch.Standard.Name
			if of == "" {
				of = family(s.batch.Standard)
			}
		}
		kinds[kind] = true
	}
	for _, s := range j.Standards {
		if of == "" || family(s) != of || slices.ContainsFunc(claimed, func(n string) bool { return tree.Key(n) == tree.Key(s.Name) }) || isBlend(s) && len(kinds) < 2 {
			continue
		}
		v := j.verdict(s, in, shares)
		switch {
		case v.Met == law.Met && !unproved(s, v):
			o.Also, o.also = append(o.Also, s.Title), append(o.also, s.Name)
		case v.near:
			o.Near = append(o.Near, v)
		}
	}
}
