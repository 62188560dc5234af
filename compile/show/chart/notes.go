package chart

// value is what is written beside a dot of a curve.
type value struct {
	x, y float64
	text string
}

// box is the paper that a text takes.
type box struct{ left, top, right, bottom float64 }

func (b box) meets(o box) bool {
	return b.left < o.right && o.left < b.right && b.top < o.bottom && o.top < b.bottom
}

const (
	noteRise = 11.0 // of a label's letters above the line that they stand on
	noteGap  = 6.0  // between a label and what it is kept off
)

// notes writes values beside their dots on a curve, clear of the curve, of the
// panel's edges and of each other: right of the dot, over it or left of it, and
// above the curve before below it, where it comes nearest.
func (p panel) notes(n int, curve func(i int) (x, y float64), values []value) {
	var taken []box
	for _, v := range values {
		b := p.place(n, curve, v, taken)
		taken = append(taken, b)
		p.c.text("label", "start", b.left, b.bottom, v.text)
	}
}

func (p panel) place(n int, curve func(i int) (x, y float64), v value, taken []box) box {
	px, py, w := p.x.at(v.x), p.y.at(v.y), wide(v.text)
	var best box
	far, found := 0.0, false
	for _, above := range []bool{true, false} {
		for _, left := range []float64{px + noteGap, px - w/2, px - noteGap - w} {
			left = max(min(left, p.right()-3-w), p.left()+noteGap)
			high, low := p.reach(n, curve, left-2, left+w+2)
			b := box{left, high - noteGap - noteRise, left + w, high - noteGap}
			away := py - b.bottom
			if !above {
				b.top, b.bottom = low+noteGap, low+noteGap+noteRise
				away = b.top - py
			}
			away = max(away, 0) + max(left-px, px-left-w, 0)
			if b.left < px && px < b.right {
				away += 2 * noteGap // a cut's line stands at the dot
			}
			free := b.top >= p.top()+2 && b.bottom <= p.bottom()-2
			for _, o := range taken {
				free = free && !b.meets(o)
			}
			if free && (!found || away < far-0.5) {
				best, far, found = b, away, true
			}
		}
	}
	if !found { // a panel too full: over the dot, inside the paper
		left := max(min(px-w/2, p.right()-3-w), p.left()+noteGap)
		best = box{left, py - 9 - noteRise, left + w, py - 9}
	}
	return best
}

// reach is how high and how low on the paper a curve goes between two places.
func (p panel) reach(n int, curve func(i int) (x, y float64), left, right float64) (high, low float64) {
	high, low = p.bottom(), p.top()
	first, _ := curve(0)
	last, _ := curve(n - 1)
	back := func(place float64) float64 {
		return p.x.from + (place-p.x.start)/(p.x.end-p.x.start)*(p.x.to-p.x.from)
	}
	see := func(y float64) { high, low = min(high, p.y.at(y)), max(low, p.y.at(y)) }
	see(between(n, min(max(back(left), first), last), curve))
	see(between(n, min(max(back(right), first), last), curve))
	for i := range n {
		if x, y := curve(i); p.x.at(x) >= left && p.x.at(x) <= right {
			see(y)
		}
	}
	return high, low
}
