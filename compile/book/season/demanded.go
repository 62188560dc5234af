package season

import "slices"

// demanded says of each line what comes of it.
func (s *answer) demanded() []Demanded {
	out := make([]Demanded, 0, len(s.Asks.Casks)+len(s.Asks.Makes))
	for _, c := range s.Asks.Casks {
		out = append(out, Demanded{Batch: c.Batch, Wanted: WantedCasks, Amount: c.N, By: c.By.String(), For: c.For, Runs: []string{}})
	}
	for _, m := range s.Asks.Makes {
		out = append(out, Demanded{Batch: m.Batch, Wanted: WantedMashes, Runs: []string{}})
	}
	// Casks go to the lines in the order of their days.
	order := make([]int, len(s.Asks.Casks))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return s.Asks.Casks[a].By.Compare(s.Asks.Casks[b].By) })
	type full struct{ at, run int }
	left := map[string][]full{}
	fills := slices.Clone(s.order)
	slices.SortStableFunc(fills, func(a, b int) int { return s.filled(a) - s.filled(b) })
	for _, j := range fills {
		i := slices.Index(s.order, j)
		name := s.list[j].course.batch.Name
		for range s.flows.runs[i].casks {
			left[name] = append(left[name], full{s.filled(j), i})
		}
	}
	for _, k := range order {
		c, d := s.Asks.Casks[k], &out[k]
		due := s.axis.on(c.By).to
		for d.Made < c.N && len(left[c.Batch]) > 0 && left[c.Batch][0].at <= due {
			x := left[c.Batch][0]
			left[c.Batch] = left[c.Batch][1:]
			d.Made++
			d.When = s.axis.stamp(x.at)
			if !slices.Contains(d.Runs, s.number[x.run]) {
				d.Runs = append(d.Runs, s.number[x.run])
			}
		}
		d.Met = d.Made >= c.N
	}
	latest := map[int]int{} // the last mash of each line, in minutes
	for j, w := range s.list {
		k := w.demand - len(s.Asks.Casks)
		if k < 0 {
			continue
		}
		d := &out[w.demand]
		d.Amount++
		if i := slices.Index(s.order, j); i >= 0 {
			d.Made++
			d.Runs = append(d.Runs, s.number[i])
			latest[w.demand] = max(latest[w.demand], s.start(j, 0))
			d.When = s.axis.stamp(latest[w.demand])
		}
		d.Met = d.Made == d.Amount
	}
	for i := range out {
		out[i].Runs = byMash(out[i].Runs, s.number)
	}
	return out
}

// byMash has numbers in the order of the runs.
func byMash(of, number []string) []string {
	slices.SortStableFunc(of, func(a, b string) int { return slices.Index(number, a) - slices.Index(number, b) })
	return of
}

// What a line wants.
const (
	WantedCasks  = "casks"
	WantedMashes = "mashes"
)
