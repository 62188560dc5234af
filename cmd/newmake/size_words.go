package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"newmake/lang/quantity"
)

// spoken joins what a person writes as several words into one: `--wash 480 gal`
// is one value, and so is `--corn 700 lb`, which names a grain of the bill. It
// concerns `newmake size` alone.
func spoken(root *cobra.Command, args []string) []string {
	cmd, _, err := root.Find(args)
	if err != nil || cmd.Name() != "size" {
		return args
	}
	var out []string
	for i := 0; i < len(args); i++ {
		name, value, given := strings.Cut(args[i], "=")
		if args[i] == "--" {
			return append(out, args[i:]...)
		}
		if !strings.HasPrefix(name, "--") || len(name) < 4 {
			out = append(out, args[i])
			continue
		}
		name = name[2:]
		flag := cmd.Flags().Lookup(name)
		if flag == nil {
			flag = cmd.InheritedFlags().Lookup(name)
		}
		if flag != nil && !slices.Contains(quantityFlags, name) {
			out = append(out, args[i])
			continue
		}
		if !given {
			i++
			if i == len(args) {
				out = append(out, "--"+name)
				break
			}
			value = args[i]
		}
		for i+1 < len(args) && isUnit(value, args[i+1]) {
			i++
			value += " " + args[i]
		}
		if flag == nil { // a grain
			name, value = "grain", name+" "+value
		}
		out = append(out, "--"+name+"="+value)
	}
	return out
}

// quantityFlags take a number with its unit.
var quantityFlags = []string{"wash", "proof", "abv", "proof-gallons", "lpa", "casks", "bottles"}

// isUnit reports whether a word goes on after a number as its unit: gal, % abv.
func isUnit(value, word string) bool {
	if value == "" || strings.ContainsAny(value, "abcdefghijklmnopqrstuvwxyz") && !strings.HasSuffix(value, "%") {
		return false
	}
	if _, ok := quantity.Lookup(word); ok {
		return true
	}
	_, ok := quantity.Lookup("% " + word)
	return ok && strings.HasSuffix(value, "%")
}
