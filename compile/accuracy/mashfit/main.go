// Command mashfit fits the constants of `model mash` to the published rows that they
// rest on, and prints the constants and the residuals, of the library and of the fit:
//
//	go run ./compile/accuracy/mashfit
//
// It takes some seconds, and changes nothing.
package main

import (
	"fmt"
	"os"

	"newmake/compile/accuracy"
)

func main() {
	if err := accuracy.FitMash(os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "mashfit:", err)
		os.Exit(1)
	}
}
