package taste

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Each order is served as often as any other, give or take one.
func TestServingIsBalanced(t *testing.T) {
	for _, c := range []struct {
		m                      Method
		samples, tasters, sets int
	}{{Triangle, 2, 2, 6}, {Triangle, 2, 5, 3}, {DuoTrio, 2, 4, 2}, {Paired, 2, 3, 3}, {Ranking, 4, 4, 1}, {Ranking, 3, 4, 2}} {
		count := map[string]int{}
		for _, s := range serving(c.m, c.samples, c.tasters, c.sets, "More rye? 2026-06-20") {
			order := ""
			for _, cup := range s.Cups {
				order += string(rune('A' + cup.Sample))
			}
			count[order]++
		}
		orders := len(ordersOf(c.m, c.samples))
		for order, n := range count {
			assert.LessOrEqual(t, n, (c.tasters*c.sets+orders-1)/orders, "%s: %s", c.m, order)
			assert.GreaterOrEqual(t, n, c.tasters*c.sets/orders, "%s: %s", c.m, order)
		}
	}
}

// The right answer is the odd cup, or the one that is like the named cup.
func TestTheRightAnswer(t *testing.T) {
	for _, s := range serving(Triangle, 2, 3, 6, "a") {
		other := 0
		for i, c := range s.Cups {
			if i != s.Right {
				assert.NotEqual(t, s.Cups[s.Right].Sample, c.Sample)
				other++
			}
		}
		assert.Equal(t, 2, other)
	}
	for _, s := range serving(DuoTrio, 2, 3, 6, "a") {
		assert.True(t, s.Cups[0].Named)
		assert.Equal(t, s.Cups[0].Sample, s.Cups[s.Right].Sample)
		assert.NotZero(t, s.Right)
	}
}

// A Williams square: each sample in each place, and after each other one, equally often.
func TestWilliams(t *testing.T) {
	for n := 2; n <= 7; n++ {
		place, after := map[string]int{}, map[string]int{}
		rows := williams(n)
		for _, o := range rows {
			for i, s := range o.cups {
				place[fmt.Sprint(i, s)]++
				if i > 0 {
					after[fmt.Sprint(o.cups[i-1], s)]++
				}
			}
		}
		assert.Len(t, place, n*n)
		assert.Len(t, after, n*(n-1))
		for _, m := range []map[string]int{place, after} {
			for k, v := range m {
				assert.Equal(t, len(rows)/n, v, "%d samples: %s", n, k)
			}
		}
	}
}

// The same name gives the same plan, another one another; codes of one set differ.
func TestCodes(t *testing.T) {
	a := serving(Triangle, 2, 4, 3, "a")
	assert.Equal(t, a, serving(Triangle, 2, 4, 3, "a"))
	assert.NotEqual(t, a, serving(Triangle, 2, 4, 3, "b"))
	for _, s := range a {
		assert.Len(t, map[string]bool{s.Cups[0].Code: true, s.Cups[1].Code: true, s.Cups[2].Code: true}, 3)
		for _, c := range s.Cups {
			assert.Len(t, c.Code, 3)
		}
	}
}
