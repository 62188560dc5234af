// Command page builds the page for a browser: one folder for any plain web server.
//
//	go run ./editors/page -o DIR
//
// The folder holds the editor, the sheet beside it, and newmake itself as WebAssembly.
// Nothing in it calls another server, and nothing that is written there leaves the
// browser.
package main

import (
	"flag"
	"fmt"
	"os"
)

func main() {
	out := flag.String("o", "", "the folder to write, which is made if it is not there")
	flag.Usage = func() {
		fmt.Fprint(os.Stderr, "page builds the folder of the page for a browser:\n\n  go run ./editors/page -o DIR\n\nServe it with any web server, or from this machine. See editors/page/README.md.\n")
	}
	flag.Parse()
	if *out == "" || flag.NArg() > 0 {
		flag.Usage()
		os.Exit(2)
	}
	size, err := build(*out)
	if err != nil {
		fmt.Fprintln(os.Stderr, "page:", err)
		os.Exit(1)
	}
	fmt.Printf("%s: %d files, %.2f MB over the network where the server packs with gzip\n", *out, size.files, float64(size.packed)/1e6)
}
