package inventory

import "newmake/lang/record"

// OnHand is a lot of a grain on hand, which a page in a browser does not count: the books would
// make it larger, and it plans batches.
type OnHand struct {
	Lot              string
	Kg               float64
	Moisture, Starch *float64
}

// OnHand has none in a browser.
func (s *Stores) OnHand(string, record.Date) []*OnHand { return nil }

// FirstIn has none in a browser.
func (s *Stores) FirstIn(string, float64, record.Date) []OnHand { return nil }

// Taken has none in a browser.
func (c *Inventory) Taken(*record.Used) []string { return nil }
