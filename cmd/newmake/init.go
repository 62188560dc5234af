package main

import (
	"embed"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"newmake/lang/diag"
)

// templates are the houses that init makes, one for each system of units.
//
//go:embed template
var templates embed.FS

// attributes keep git from changing line endings on other systems.
const attributes = "*.batch text eol=lf\n"

func (a *app) initCommand() *cobra.Command {
	var units string
	cmd := &cobra.Command{
		Use:   "init FOLDER",
		Short: "Make a house with a plant and a first batch to change",
		Long: "init makes a folder with a house in it: a plant, in house.batch, and a first batch, both with\n" +
			"notes and with numbers to put your own in the place of. It never writes over a file.",
		Example: "  newmake init my-house\n" +
			"  newmake init my-house --units si",
		Args: cobra.MaximumNArgs(1),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
			return nil, cobra.ShellCompDirectiveFilterDirs
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if units != "us" && units != "si" {
				return usage("--units is us or si, not %q", units)
			}
			if len(args) == 0 {
				fmt.Fprint(a.out, "newmake init makes a house to begin with.\n\n"+cmd.Example+"\n")
				return nil
			}
			return a.init(args[0], units)
		},
	}
	cmd.Flags().StringVar(&units, "units", "us", "us or si: what the house is written in")
	return cmd
}

// init makes a house in a folder.
func (a *app) init(folder, units string) error {
	made, err := houseFiles(units)
	if err != nil {
		return err
	}
	if err := fit(folder, made); err != nil {
		return err
	}
	if err := uninterrupted(func() error { return a.makeHouse(folder, made) }); err != nil {
		return err
	}
	plant, first := filepath.Join(folder, "house.batch"), ""
	for _, f := range made {
		if !a.quiet {
			fmt.Fprintf(a.out, "made %s\n", diag.Safe(filepath.Join(folder, f.name), a.plain()))
		}
		if strings.HasPrefix(f.name, "first-") {
			first = filepath.Join(folder, f.name)
		}
	}
	if a.quiet {
		return nil
	}
	next := [][2]string{
		{"edit " + shellWord(plant), "your vessels, your water, your prices"},
		{"newmake check " + shellWord(folder), "what is wrong, if anything is"},
		{"newmake plan " + shellWord(first), "predictions and the run sheet"},
		{"newmake stock", "grains, yeasts, enzymes, casks, standards"},
	}
	widest := 0
	for _, n := range next {
		widest = max(widest, diag.Width(n[0]))
	}
	fmt.Fprint(a.out, "\nNext:\n")
	for _, n := range next {
		fmt.Fprintf(a.out, "  %s  %s\n", pad(diag.Safe(n[0], a.plain()), widest), n[1])
	}
	return nil
}

// houseFiles are the files of a new house, in order.
func houseFiles(units string) ([]file, error) {
	made := []file{{name: ".gitattributes", before: []byte(attributes)}}
	dir := "template/" + units
	entries, err := templates.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	for _, e := range entries {
		text, err := templates.ReadFile(dir + "/" + e.Name())
		if err != nil {
			return nil, err
		}
		made = append(made, file{name: e.Name(), before: text})
	}
	slices.SortFunc(made, func(a, b file) int { return strings.Compare(a.name, b.name) })
	return made, nil
}

// fit sees that a house may be made in a folder: it would write over nothing, and
// stands in no other house.
func fit(folder string, made []file) error {
	info, err := os.Stat(folder)
	if err == nil && !info.IsDir() {
		return usage("%s is a file: name a folder", folder)
	}
	for _, f := range made {
		if _, err := os.Lstat(filepath.Join(folder, f.name)); err == nil {
			return usage("%s is there already: nothing was made", filepath.Join(folder, f.name))
		}
	}
	at, err := filepath.Abs(folder)
	if err != nil {
		return usage("cannot make %s: %v", folder, reason(err))
	}
	for dir := filepath.Dir(at); ; dir = filepath.Dir(dir) {
		if _, err := os.Stat(filepath.Join(dir, "house.batch")); err == nil {
			return usage("%s lies in a house, %s, and a house in a house is not read: name a folder outside it, or write a batch there", folder, dir)
		}
		if dir == filepath.Dir(dir) {
			return nil
		}
	}
}

// makeHouse writes the files of a new house, all or none.
func (a *app) makeHouse(folder string, made []file) (err error) {
	var new []string // what there was not before, in order
	defer func() {
		if err != nil {
			for _, path := range slices.Backward(new) {
				os.Remove(path) // a folder only if it is empty
			}
		}
	}()
	for dir := filepath.Clean(folder); ; dir = filepath.Dir(dir) {
		if _, err := os.Stat(dir); err == nil || dir == filepath.Dir(dir) {
			break
		}
		new = slices.Insert(new, 0, dir)
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return usage("cannot make %s: %v", folder, reason(err))
	}
	for _, f := range made {
		path := filepath.Join(folder, f.name)
		if err := a.disk.Create(path, f.before, 0o644); err != nil {
			return usage("cannot write %s: %v", path, reason(err))
		}
		new = append(new, path)
	}
	return nil
}

// shellWord is a path as one word of a shell.
func shellWord(path string) string {
	if strings.ContainsAny(path, " '\"$`\\*?;&|<>()[]{}!#~\t\n") {
		return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
	}
	return path
}
