package main

import (
	"github.com/spf13/cobra"

	"newmake/compile/front"
	"newmake/compile/show/formats"
	"newmake/lang/diag"
	"newmake/lang/inventory"
)

// booksFlags are those of every command that reads a house's records as a whole: which
// house, and how the answer is written.
type booksFlags struct{ format, output, house string }

// declare declares them, and the ways in which the answer can be written.
func (f *booksFlags) declare(cmd *cobra.Command, ways formats.Ways) {
	cmd.Flags().StringVarP(&f.output, "output", "o", "", "write to this file")
	formatFlag(cmd, &f.format, ways.Names())
	cmd.Flags().StringVar(&f.house, "house", ".", "a folder or file of the house")
}

// booksRead are the records of a house.
type booksRead struct {
	*front.Source
	texts *inventory.Inventory
	said  diag.List
}

// read reads the records. They give no answer where they,
// or the recipes that the runs are of, have errors.
func (f booksFlags) read(a *app, format string) (*booksRead, error) {
	src, err := a.load(f.house, "")
	if err != nil {
		return nil, a.cannot(err, format)
	}
	texts, said := src.House.Inventory()
	if said.HasErrors() {
		return nil, a.noAnswer(said, format)
	}
	if behind := src.House.BehindRuns(); len(behind) > 0 {
		return nil, a.noAnswer(behind, format)
	}
	return &booksRead{src, texts, said}, nil
}

// answer writes the answer, and beside a text what is to be said of the records.
func (f booksFlags) answer(a *app, b *booksRead, format string, out []byte) error {
	if format == "text" {
		a.show(b.said)
	}
	return a.write(f.output, out, b.Inputs())
}
