package ledger

import (
	"fmt"

	"newmake/lang/record"
)

// checks holds the books against themselves, and what was gauged against them.
func (m *monthly) checks(l *Ledger) {
	m.balances(l)
	m.producedBySum(l)
	m.filledCasks(l)
	m.feintsWait(l)
	m.vatsLose(l)
	seen := map[string]bool{}
	for _, c := range append(m.receivers(), append(m.now.odd, m.stores.odd...)...) {
		if c.day.Compare(m.first) < 0 {
			continue
		}
		c.File, c.Line = place(c.at)
		if k := fmt.Sprint(c.What, c.Of, c.Says, c.Line); !seen[k] {
			seen[k] = true
			l.Checks = append(l.Checks, c)
		}
	}
}

// balances: what was on hand, and came, less what went, is on hand.
func (m *monthly) balances(l *Ledger) {
	c := Check{What: "opening, in and out make the closing", OK: true}
	var whole cents
	for _, a := range onPremises {
		sum := m.then.onHand(a)
		for _, x := range m.lines {
			if x.kind.to == a {
				sum = sum.plus(x.sum)
			}
			if x.kind.from == a {
				sum = sum.minus(x.sum)
			}
		}
		if off := m.now.onHand(a).minus(sum); !off.zero() {
			c.OK, c.Of, c.By = false, m.Law.title(a), off.amount()
		}
		if now := m.now.onHand(a); now.pg < -belowNothing {
			l.Checks = append(l.Checks, Check{What: "no account closes below nothing", Of: m.Law.title(a), Says: "more went out of it than ever came in", By: now.amount()})
		}
		whole = whole.plus(m.now.onHand(a))
	}
	c.Says = "in each account; the opening is the closing of the month before"
	l.Checks = append(l.Checks, c)

	// All that was ever distilled is on hand, or went by a line that says so.
	var ever cents
	for _, a := range []Account{Distilled, Stills, Losses, Samples, Withdrawn, Destroyed} {
		ever = ever.minus(m.now.onHand(a))
	}
	off := ever.minus(whole)
	l.Checks = append(l.Checks, Check{What: "all that was distilled is accounted for", OK: off.zero(), Says: "on hand, withdrawn, sampled, destroyed or lost", By: off.amount()})
}

// producedBySum: what the account says was produced is the sum of the production gauges,
// apart from casks that were filled at the production gauge.
func (m *monthly) producedBySum(l *Ledger) {
	var gauges, lines cents
	at := map[string]bool{}
	for _, g := range m.now.gauges {
		if g.on.Compare(m.first) >= 0 && g.what == "production" {
			gauges = gauges.plus(g.amount)
			at[spot(g.visit)] = true
		}
	}
	for _, x := range m.lines {
		if x.Kind == "produced" && x.Corrects == "" && at[fmt.Sprint(x.File, ":", x.Line)] {
			lines = lines.plus(x.sum)
		}
	}
	off := lines.minus(gauges)
	l.Checks = append(l.Checks, Check{What: "produced is the sum of the production gauges", OK: off.zero(), Says: fmt.Sprintf("%d gauges", len(at)), By: off.amount()})
}

func spot(v *record.Visit) string {
	file, line := place(v.At)
	return fmt.Sprint(file, ":", line)
}

// filledCasks: every cask that was filled has a gauge, a batch and a lot of grain.
func (m *monthly) filledCasks(l *Ledger) {
	gauged := map[*record.Visit]bool{}
	for _, g := range m.now.gauges {
		gauged[g.visit] = true
	}
	n, bad := 0, len(l.Checks)
	for _, life := range m.Texts.Lives {
		for _, f := range life.Fills {
			if on := f.On(); on.Compare(m.first) < 0 || on.Compare(m.last) > 0 {
				continue
			}
			n++
			c := Check{What: "every cask has a gauge, a lot and a batch", Of: "cask " + life.Serial, at: f.Visit.At}
			lots := false
			for i := range f.Run.Used {
				lots = lots || f.Run.Used[i].Lot != ""
			}
			switch {
			case !gauged[f.Visit] && m.now.sees(f.Visit):
				c.Says = "its fill has no gauge"
			case m.Declared != nil && !m.Declared(f.Run.Batch):
				c.Says = "there is no batch " + f.Run.Batch
			case !lots:
				c.Says = "run " + f.Run.Number + " names no lot of grain"
			default:
				continue
			}
			c.File, c.Line = place(c.at)
			l.Checks = append(l.Checks, c)
		}
	}
	if len(l.Checks) == bad {
		l.Checks = append(l.Checks, Check{What: "every cask has a gauge, a lot and a batch", OK: true, Says: fmt.Sprintf("%d filled", n)})
	}
}

// vatsLose: what is blended, reduced and bottled gets no more on the way. Each step of a vat may
// find a little by its gauge; all of them together may find no more.
func (m *monthly) vatsLose(l *Ledger) {
	type sums struct{ in, found cents }
	by := map[*holder]*sums{}
	of := func(h *holder) *sums {
		if by[h] == nil {
			by[h] = &sums{}
		}
		return by[h]
	}
	now := map[*holder]bool{}
	for _, v := range m.now.moves {
		if v.to.account == Vats {
			if s := of(v.to); v.from.account == Losses {
				s.found = s.found.plus(v.amount)
			} else {
				s.in = s.in.plus(v.amount)
			}
			now[v.to] = now[v.to] || v.on.Compare(m.first) >= 0
		}
		if v.from.account == Vats {
			if v.to.account == Losses {
				s := of(v.from)
				s.found = s.found.minus(v.amount)
			}
			now[v.from] = now[v.from] || v.on.Compare(m.first) >= 0
		}
	}
	for _, h := range m.now.all {
		s := by[h]
		if s == nil || !now[h] || s.found.share(s.in) <= workLoses && (s.in.pg > 0 || s.found.pg <= belowNothing) {
			continue
		}
		c := Check{What: "a vat loses no less than nothing", Of: named(h), Says: "more came out of it than went in, all its gauges together", By: s.found.amount()}
		c.File, c.Line = place(h.at)
		l.Checks = append(l.Checks, c)
	}
}

// feintsWait: feints go into the next spirit run. Those of many runs, each by itself, wait
// for lines that say which run charged them.
func (m *monthly) feintsWait(l *Ledger) {
	var sum cents
	var first *record.Visit
	seen := map[*holder]bool{}
	for _, o := range m.now.feints {
		if o.visit.To != "" || seen[o.in] || o.in.balance.pg <= 0 {
			continue
		}
		if first == nil {
			first = o.visit
		}
		seen[o.in] = true
		sum = sum.plus(o.in.balance)
	}
	if len(seen) <= runsWait {
		return
	}
	c := Check{What: "feints are charged again", Of: "unfinished", Says: fmt.Sprintf("the feints of %d runs are on hand, each by itself, and no line says which run charged them, or which tank they went to", len(seen)), By: sum.amount()}
	c.File, c.Line = place(first.At)
	l.Checks = append(l.Checks, c)
}

// runsWait is of how many runs feints may wait, each by itself, before their charges are
// missed: those of the last, and one more that is being used up (common practice).
const runsWait = 2

// receivers: the gauge of the receiver and the production gauge are of the same spirit.
func (m *monthly) receivers() []Check {
	var out []Check
	for _, r := range m.Texts.Runs {
		all := m.now.first[r.Number]
		if len(all) == 0 {
			continue
		}
		var found, produced cents
		for _, g := range all {
			found = found.plus(g.amount)
		}
		var last gauge
		for _, g := range m.now.gauges {
			if g.what == "production" && g.of == "run "+r.Number {
				produced, last = produced.plus(g.amount), g
			}
		}
		if last.visit == nil {
			continue
		}
		if off := found.minus(produced); off.share(found) > workLoses || off.share(found) < -workLoses {
			out = append(out, Check{What: "the receiver's gauge is the production gauge", Of: "run " + r.Number, Says: fmt.Sprintf("the production gauge is %+.1f %% beside the receiver's", -100*off.share(found)), By: off.amount(), day: last.on, at: last.visit.At})
		}
	}
	return out
}
