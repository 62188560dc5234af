package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Words that belong together are joined, for size alone.
func TestSpoken(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"size a.batch|--wash|480|gal", "size a.batch|--wash=480 gal"},
		{"size|--wash|480|gal|a.batch", "size|--wash=480 gal|a.batch"},
		{"size|--wash=480|gal|a.batch", "size|--wash=480 gal|a.batch"},
		{"size|--wash|480gal|a.batch", "size|--wash=480gal|a.batch"},
		{"size|a.batch|--corn|700|lb|-w", "size|a.batch|--grain=corn 700 lb|-w"},
		{"size|a.batch|--two-row-malt|300|kg", "size|a.batch|--grain=two-row-malt 300 kg"},
		{"size|a.batch|--casks|2", "size|a.batch|--casks=2"},
		{"size|a.batch|--casks|2|casks", "size|a.batch|--casks=2|casks"},
		{"size|a.batch|--cut|hearts|--proof|130", "size|a.batch|--cut|hearts|--proof=130"},
		{"size|a.batch|--proof|130|proof", "size|a.batch|--proof=130 proof"},
		{"size|a.batch|--batch|Ferry Landing|-q", "size|a.batch|--batch|Ferry Landing|-q"},
		{"size|a.batch|--color|never|--quiet", "size|a.batch|--color|never|--quiet"},
		{"size|a.batch|--wash", "size|a.batch|--wash"},
		{"size|--|--wash|gal", "size|--|--wash|gal"},
		{"plan|--corn|700|lb", "plan|--corn|700|lb"},
		{"diff|a|b", "diff|a|b"},
		{"", ""},
	} {
		in := strings.Split(strings.Replace(c.in, "size ", "size|", 1), "|")
		want := strings.Split(strings.Replace(c.want, "size ", "size|", 1), "|")
		if c.in == "" {
			in, want = nil, nil
		}
		assert.Equal(t, want, spoken(root(terminal()), in), c.in)
	}
}

func FuzzSpoken(f *testing.F) {
	f.Add("size|a|--wash|480|gal")
	f.Add("size|--=|--|-|%|abv")
	f.Fuzz(func(_ *testing.T, s string) { spoken(root(terminal()), strings.Split(s, "|")) })
}
