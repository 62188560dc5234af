package why

import (
	"fmt"
	"slices"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// Format and Version name the shape of an answer as JSON. A minor version adds
// names and never takes one away.
const (
	Format  = "newmake.why"
	Version = "1.0"
)

// Compile computes a batch, its numbers not rounded; nil if it cannot be
// computed. It has to bear being called from several goroutines.
type Compile func(*recipe.Batch) *plan.Plan

// Question is what is asked.
type Question struct {
	Batch   *recipe.Batch
	Compile Compile
	Units   measure.Units
	Value   string // any of its names
	Depth   int    // how many generations are told in full: 1 is the value alone
}

// Answer is a value explained.
type Answer struct {
	Format  string `json:"format"`
	Version string `json:"version"`
	Batch   string `json:"batch"`
	Units   string `json:"units"` // "us" or "si"
	Value   Node   `json:"value"`
}

// Node is one number and how it came about.
type Node struct {
	Name   string  `json:"name"`
	Title  string  `json:"title"`
	Amount Number  `json:"amount"`
	Note   string  `json:"note,omitempty"`
	Given  bool    `json:"given,omitempty"` // the model gives it whole: no sum leads to it
	Work   []Line  `json:"working"`
	From   []Ref   `json:"from"`   // the numbers that it came from
	Inputs []Input `json:"inputs"` // what is written and bears on it
	Model  Model   `json:"model"`
	Off    []Off   `json:"off,omitempty"` // by what a reading of it may be off
	Moves  []Move  `json:"moves"`         // the greatest first
	// Nodes are those of From that are told in full: within the depth asked for,
	// each where it is met first.
	Nodes []Node `json:"nodes,omitempty"`
}

// Ref is a number that another came from.
type Ref struct {
	Name   string `json:"name"`
	Title  string `json:"title"`
	Amount Number `json:"amount"`
	Note   string `json:"note,omitempty"`
}

// Model is where a formula comes from, and how far it goes.
type Model struct {
	Says   string `json:"says"`
	Source string `json:"source"`
	Valid  string `json:"valid"`
}

// Unknown is the error of a value that no batch has, or that this one has not.
type Unknown struct {
	Name   string
	Near   []string
	Absent bool // others have it
}

func (e *Unknown) Error() string {
	if e.Absent {
		return fmt.Sprintf("this batch has no %q", e.Name)
	}
	if len(e.Near) == 0 {
		return fmt.Sprintf("no number is called %q", e.Name)
	}
	return fmt.Sprintf("no number is called %q; did you mean `%s`?", e.Name, strings.Join(e.Near, "` or `"))
}

// MostDepth is the deepest that is told.
const MostDepth = 9

// Explain answers a question. The error is *Unknown for a value that there is
// not, and else says why the batch cannot be computed.
func Explain(q Question) (*Answer, error) {
	p := q.Compile(q.Batch)
	if p == nil {
		return nil, fmt.Errorf("the batch cannot be computed")
	}
	a := &asked{b: q.Batch, p: p, inUnits: inUnits{q.Units}}
	v, ok := a.find(q.Value)
	if !ok {
		return nil, &Unknown{Name: q.Value, Near: a.near(q.Value), Absent: Known(q.Value)}
	}
	out := &Answer{Format: Format, Version: Version, Batch: q.Batch.Name, Units: "us"}
	if q.Units == measure.SI {
		out.Units = "si"
	}
	depth := min(max(q.Depth, 1), MostDepth)
	nudged := a.nudge(q.Compile, v)
	out.Value = a.node(v, depth, nudged, map[string]bool{})
	a.inTrade(&out.Value)
	return out, nil
}

// node tells one value, and those it came from as deep as asked.
func (a *asked) node(v value, depth int, nudged []nudged, told map[string]bool) Node {
	told[v.name] = true
	n := Node{
		Name: v.named(a), Title: v.title, Amount: a.amountOf(v), Given: v.given, Work: []Line{}, From: []Ref{}, Inputs: a.inputs(v.inputs),
		Model: a.modelOf(v), Off: a.off(v), Moves: a.moves(v, nudged),
	}
	if v.note != nil {
		n.Note = v.note(a)
	}
	if v.work != nil {
		n.Work = append(n.Work, v.work(a)...)
	}
	var deeper []value
	for _, name := range v.from {
		c, ok := a.find(name)
		if !ok {
			continue
		}
		r := Ref{Name: c.named(a), Title: c.title, Amount: a.amountOf(c)}
		if c.note != nil {
			r.Note = c.note(a)
		}
		n.From = append(n.From, r)
		deeper = append(deeper, c)
	}
	if depth > 1 {
		for _, c := range deeper {
			if !told[c.name] {
				n.Nodes = append(n.Nodes, a.node(c, depth-1, nudged, told))
			}
		}
	}
	return n
}

// amountOf is a value's number as it is shown.
func (a *asked) amountOf(v value) Number {
	n := a.number(v.amount(a))
	n.Value = n.shown()
	return n
}

// Part is a group of values that can be asked for.
type Part struct {
	Title  string `json:"title"`
	Values []Ref  `json:"values"`
}

// List tells what can be asked of a batch.
func List(b *recipe.Batch, compile Compile, u measure.Units) ([]Part, error) {
	p := compile(b)
	if p == nil {
		return nil, fmt.Errorf("the batch cannot be computed")
	}
	a := &asked{b: b, p: p, inUnits: inUnits{u}}
	var out []Part
	for _, part := range a.parts() {
		listed := Part{Title: part.title, Values: []Ref{}}
		for _, v := range part.values {
			if v.us && !a.us() {
				continue
			}
			listed.Values = append(listed.Values, Ref{Name: v.named(a), Title: a.u.Words(v.title), Amount: a.amountOf(v)})
		}
		out = append(out, listed)
	}
	return out, nil
}

// Names are the numbers that may be asked for, of any batch, as they are listed.
func Names() []string {
	var out []string
	for _, p := range parts {
		for _, v := range p.values {
			out = append(out, v.name)
		}
	}
	return out
}

// Known reports whether a word is the name of a value of any batch.
func Known(name string) bool {
	return slices.ContainsFunc(parts, func(p part) bool { return slices.ContainsFunc(p.values, func(v value) bool { return v.called(name) }) })
}
