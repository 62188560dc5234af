package season

// gap says how many of the wanted batches any plan can have.
func (s *solver) gap() Gap {
	g := Gap{}
	for j, w := range s.list {
		if w.done != nil {
			continue
		}
		g.Most++
		if s.inTime(j) {
			g.Met++
		}
	}
	g.By = "demand"
	g.Proved = g.Met == g.Most
	if g.Most > 0 {
		g.Share = to(float64(g.Most-g.Met)/float64(g.Most), 3)
	}
	return g
}

// inTime says that a want is placed, and done by its day.
func (s *solver) inTime(j int) bool {
	w := s.list[j]
	return s.placed.Present[j] && (w.due == 0 || s.start(j, w.course.fill)+w.course.blocks[w.course.fill].minutes <= w.due)
}
