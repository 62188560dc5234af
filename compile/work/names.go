package work

import (
	"newmake/lang/words"
	"slices"
	"strings"
)

// Names says what work is going on, once each.
func Names(keys []string) string {
	var out []string
	for _, key := range keys {
		if n := name(key); !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return words.And(out)
}

// name is a piece of work in words.
func name(key string) string {
	switch stage, what, _ := strings.Cut(key, "."); {
	case key == "mash.clean":
		return "cleaning the cooker"
	case key == "mash.draff":
		return "digging out the draff"
	case key == "ferment.clean":
		return "cleaning the fermenter"
	case what == "clean":
		return "cleaning the still"
	case stage == "strip":
		return "the stripping run"
	case stage == "spirit":
		return "the spirit run"
	case key == "ferment.fill", key == "ferment.pitch":
		return "setting the ferment"
	case stage == "fill" && what == "cask":
		return "filling the casks"
	case stage == "fill":
		return "gauging and reducing"
	default:
		return "the " + stage
	}
}
