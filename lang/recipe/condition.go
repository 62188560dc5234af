package recipe

import (
	"slices"
	"strings"

	"newmake/lang/words"
)

// A standard is held against a batch twice: by the checker, on what the text tells,
// and by the plan, on what was computed. What both ask of a batch is here.

const (
	shareSlack = 1e-6 // of a share of the bill, which is a sum of rounded numbers
	slack      = 1e-4 // of an age or a size, as a share of it: months of a year, gallons in litres
)

// GrainShare is the share of a bill that a condition speaks of.
func (c *Condition) GrainShare(b *Bill) float64 {
	share := 0.0
	for _, l := range b.Lines {
		if c.Counts(l.Grain) {
			share += l.Share
		}
	}
	return share
}

// GrainsDo reports whether a share of the bill is what GrainLeast, GrainMost or GrainSome asks.
func (c *Condition) GrainsDo(share float64) bool {
	switch c.Test {
	case GrainLeast:
		return share >= c.Share-shareSlack
	case GrainMost:
		return share <= c.Share+shareSlack
	}
	return share > 0
}

// GrainText names the grains that a condition speaks of.
func (c *Condition) GrainText() string {
	text := words.Or(c.Grains)
	if len(c.Grains) == 1 && c.Grains[0] == "any" {
		text = "grain"
	}
	switch {
	case c.Malted:
		return "malted " + text
	case c.Unmalted:
		return "unmalted " + text
	}
	return text
}

// Rested reports whether a time in wood is as long as AgeLeast asks.
func (c *Condition) Rested(restS float64) bool { return restS >= c.AgeS*(1-slack) }

// WoodDoes reports whether a cask is of a wood that WoodIs allows.
func (c *Condition) WoodDoes(k *Cask) bool {
	return len(c.Woods) == 0 || slices.ContainsFunc(c.Woods, func(w Wood) bool { return w.Is(k) })
}

// SizeDoes reports whether a cask is no greater than WoodIs allows.
func (c *Condition) SizeDoes(k *Cask) bool { return c.SizeM3 == 0 || k.SizeM3 <= c.SizeM3*(1+slack) }

// NoWoodDoes reports whether a batch that goes into no wood is what WoodIs allows.
func (c *Condition) NoWoodDoes() bool {
	return slices.ContainsFunc(c.Woods, func(w Wood) bool { return w.None })
}

// Is reports whether a cask is of this wood. A char that is written on wood that is not
// charred is a mistake of its own, and does not make it so.
func (w Wood) Is(k *Cask) bool {
	return !w.None && (w.Use == "" || w.Use == "new" == k.New) && (w.Char == "" || w.Char == "charred" == k.Kind.Charred) && (w.Of == "" || w.Of == k.Kind.Tree)
}

// Text names the wood: new charred oak.
func (w Wood) Text() string {
	of := w.Of
	if of == "" {
		of = "wood"
	}
	return strings.Join(strings.Fields(w.Use+" "+w.Char+" "+of), " ")
}
