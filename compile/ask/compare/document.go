package compare

// Document is what one run of diff found: a comparison for each batch that both
// sides have, and the batches that only one has.
type Document struct {
	Format  string        `json:"format"`
	Version string        `json:"version"`
	Pairs   []*Comparison `json:"comparisons"`
	Added   []string      `json:"added,omitempty"`   // batches that only the new side has
	Removed []string      `json:"removed,omitempty"` // batches that only the old side has
	Broken  []Broken      `json:"broken,omitempty"`  // batches with errors, which cannot be compared
}

// Broken is a batch that cannot be compared, and why.
type Broken struct {
	Label string `json:"label"`
	Batch string `json:"batch,omitempty"`
	Why   string `json:"why"`
}

// NewDocument makes an empty one.
func NewDocument() *Document {
	return &Document{Format: Format, Version: Version, Pairs: []*Comparison{}}
}

// Differs reports whether there is a difference in meaning.
func (d *Document) Differs() bool {
	for _, c := range d.Pairs {
		if !c.Same {
			return true
		}
	}
	return len(d.Added)+len(d.Removed)+len(d.Broken) > 0
}
