// Command mutation changes the program in one place at a time and tells which
// changes no test notices. See .ci/mutate.
package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// tested is where changes are made, unless packages are named.
var tested = []string{
	"./lang/trade", "./compile/notice", "./compile/work", "./compile/law", "./compile/promise", "./compile/numbers",
	"./compile/stage/...", "./compile/matter/...", "./lang/schema",
}

func main() {
	seed := flag.Uint64("seed", 1, "which changes are tried")
	n := flag.Int("n", 40, "how many are tried")
	at := flag.String("at", "", "only changes in files whose path begins so")
	flag.Parse()
	if err := run(*seed, *n, *at, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
}

func run(seed uint64, n int, at string, patterns []string) error {
	if len(patterns) == 0 {
		patterns = tested
	}
	all, err := changesIn(patterns, at)
	if err != nil {
		return err
	}
	r := rand.New(rand.NewPCG(seed, 0))
	r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	folder, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)

	var survivors []string
	tried := 0
	for _, c := range all {
		if tried == n {
			break
		}
		c.choose(r)
		if err := sound(c.pkg); err != nil {
			return err
		}
		fate, err := c.try(folder)
		if err != nil {
			return err
		}
		fmt.Printf("%-8s %s\n", fate, c)
		switch fate {
		case unbuilt:
			continue
		case survived:
			survivors = append(survivors, c.String())
		}
		tried++
	}
	fmt.Printf("\n%d of %d changes were noticed by no test\n", len(survivors), tried)
	for _, s := range survivors {
		fmt.Println("  " + s)
	}
	if 10*len(survivors) > tried {
		return fmt.Errorf("that is more than one in ten")
	}
	return nil
}

// What becomes of a change.
const (
	killed   = "noticed"
	survived = "SURVIVED"
	unbuilt  = "no build"
)

// try runs the tests nearest to a change: those of its own package, then those
// that put the package to use.
func (c *change) try(folder string) (fate string, err error) {
	changed := filepath.Join(folder, "changed.go")
	if err := os.WriteFile(changed, c.applied(), 0o666); err != nil {
		return "", err
	}
	overlay, err := json.Marshal(map[string]map[string]string{"Replace": {c.file: changed}})
	if err != nil {
		return "", err
	}
	list := filepath.Join(folder, "overlay.json")
	if err := os.WriteFile(list, overlay, 0o666); err != nil {
		return "", err
	}
	if exec.Command("go", "build", "-overlay", list, c.pkg).Run() != nil {
		return unbuilt, nil
	}
	for _, pkg := range nearest(c.pkg) {
		out, err := exec.Command("go", "test", "-overlay", list, "-vet=off", "-count=1", "-failfast", "-timeout=3m", pkg).CombinedOutput()
		if err != nil {
			if bytes.Contains(out, []byte("[build failed]")) {
				return "", fmt.Errorf("the tests of %s do not build:\n%s", pkg, out)
			}
			return killed, nil
		}
	}
	return survived, nil
}

// sound says that the tests nearest to a package hold while nothing is changed: one that
// fails by itself would notice every change. Go remembers what has held.
func sound(pkg string) error {
	if out, err := exec.Command("go", append([]string{"test"}, nearest(pkg)...)...).CombinedOutput(); err != nil {
		return fmt.Errorf("the tests of %s fail while nothing is changed:\n%s", pkg, out)
	}
	return nil
}

// nearest is the packages whose tests look at a package, the quickest first.
func nearest(pkg string) []string {
	out := []string{pkg}
	switch {
	case strings.HasSuffix(pkg, "/lang/schema"):
		return append(out, "./lang/tree", "./lang/reference", "./lang/check")
	case strings.Contains(pkg, "/lang/"):
		return append(out, "./lang/check")
	case strings.Contains(pkg, "/matter/starch"):
		out = append(out, "./compile/stage/mash", "./compile/stage/ferment")
	case strings.Contains(pkg, "/matter/"):
		out = append(out, "./compile/stage/gauge", "./compile/stage/still")
	}
	return append(out, "./compile/show", "./compile")
}

// changesIn lists every change that could be made in some packages.
func changesIn(patterns []string, at string) ([]*change, error) {
	list, err := exec.Command("go", append([]string{"list", "-f", `{{$p := .}}{{range .GoFiles}}{{$p.ImportPath}} {{$p.Dir}}/{{.}}{{"\n"}}{{end}}`}, patterns...)...).Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	top, err := os.Getwd()
	if err != nil {
		return nil, err
	}
	var out []*change
	for _, line := range strings.Split(strings.TrimSpace(string(list)), "\n") {
		pkg, file, ok := strings.Cut(strings.TrimSpace(line), " ")
		if !ok {
			continue
		}
		name, err := filepath.Rel(top, file)
		if err != nil {
			return nil, err
		}
		if !strings.HasPrefix(name, at) {
			continue
		}
		found, err := changes(pkg, file, name)
		if err != nil {
			return nil, err
		}
		out = append(out, found...)
	}
	slices.SortStableFunc(out, func(a, b *change) int { return strings.Compare(a.name, b.name) })
	return out, nil
}
