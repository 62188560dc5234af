// Command mutation changes the program in one place at a time and tells which
// changes no test notices. See .ci/mutate.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
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
	wide := flag.Bool("wide", false, "ask the tests of every package that leans on the changed one, not the nearest alone")
	flag.Parse()
	if err := run(*seed, *n, *at, *wide, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
}

func run(seed uint64, n int, at string, wide bool, patterns []string) error {
	if len(patterns) == 0 {
		patterns = tested
	}
	files, err := sources(patterns)
	if err != nil {
		return err
	}
	all, err := changesIn(files, at)
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

	// A change or two in a hundred does not build.
	all = all[:min(len(all), n+n/10+2)]
	for _, c := range all {
		c.choose(r)
	}
	s, err := switchAll(folder, files, all)
	if err != nil {
		return err
	}
	fmt.Fprintf(os.Stderr, "%d of %d changes are switched, the others are built one by one\n", len(s.numbers), len(all))
	var survivors []string
	tried := 0
	for _, c := range all {
		if tried == n {
			break
		}
		ask := nearest(c.pkg)
		if wide {
			if ask, err = leaning(c.pkg, ask); err != nil {
				return err
			}
		}
		fate, by, err := s.try(c, ask)
		if err != nil {
			return err
		}
		fmt.Printf("%-8s %s %s\n", fate, c, by)
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

// try runs tests with a change, package by package, until one notices it; by says which.
// Where it can't be switched, or the tests of a package do not hold with the switches alone
// (a constant that has become a variable has another type for them), it is built by itself.
func (s *switched) try(c *change, ask []string) (fate, by string, err error) {
	number := s.numbers[c]
	if number == "" {
		return s.tryAlone(c, ask)
	}
	for _, pkg := range ask {
		if held, err := s.holds(pkg, ""); err != nil || !held {
			return s.tryAlone(c, ask)
		}
		held, err := s.holds(pkg, number)
		if err != nil {
			return "", "", err
		}
		if !held {
			return killed, pkg, nil
		}
	}
	return survived, "", nil
}

// tryAlone is try of a program with the one change.
func (s *switched) tryAlone(c *change, ask []string) (fate, by string, err error) {
	one, err := alone(s.folder, c)
	if err != nil || one == nil {
		return unbuilt, "", err
	}
	for _, pkg := range ask {
		// One that fails by itself would notice every change. Go remembers what has held.
		if out, err := exec.Command("go", "test", pkg).CombinedOutput(); err != nil {
			return "", "", fmt.Errorf("the tests of %s fail while nothing is changed:\n%s", pkg, out)
		}
		held, err := one.holds(pkg, "")
		if err != nil {
			return "", "", err
		}
		if !held {
			return killed, pkg, nil
		}
	}
	return survived, "", nil
}

// alone is the program with one change, always made.
func alone(folder string, c *change) (*switched, error) {
	changed, list := filepath.Join(folder, "changed.go"), filepath.Join(folder, "overlay.json")
	if err := os.WriteFile(changed, c.applied(), 0o666); err != nil {
		return nil, err
	}
	overlay, err := json.Marshal(map[string]map[string]string{"Replace": {c.file: changed}})
	if err != nil {
		return nil, err
	}
	if err := os.WriteFile(list, overlay, 0o666); err != nil {
		return nil, err
	}
	if exec.Command("go", "build", "-overlay", list, "./...").Run() != nil {
		return nil, nil
	}
	own := filepath.Join(folder, "alone")
	if err := os.MkdirAll(own, 0o777); err != nil {
		return nil, err
	}
	return &switched{folder: own, overlay: list, tests: map[string]string{}, sound: map[string]bool{}, limits: map[string]time.Duration{}}, nil
}

// holds reports whether the tests of a package hold with a change, or, for "", as the program is
// without one.
func (s *switched) holds(pkg, number string) (bool, error) {
	if held, ok := s.sound[pkg]; ok && number == "" {
		return held, nil
	}
	test, err := s.test(pkg)
	if err != nil {
		return false, err
	}
	if _, err := os.Stat(test); err != nil {
		return true, nil // a package without tests notices nothing
	}
	limit, ok := s.limits[pkg]
	if !ok {
		limit = 10 * time.Minute
	}
	cmd := exec.Command(test, "-test.failfast", "-test.timeout="+limit.String())
	cmd.Dir = strings.TrimPrefix(strings.TrimPrefix(pkg, "newmake/"), "./")
	cmd.Env = append(os.Environ(), setting+"="+number)
	start := time.Now()
	err = cmd.Run()
	if number == "" {
		// A change may keep a loop from ending; a machine that others use is no change.
		s.sound[pkg], s.limits[pkg] = err == nil, max(90*time.Second, 6*time.Since(start))
	}
	return err == nil, nil
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

// leaning is the nearest packages, and after them all others whose tests lean on a package.
func leaning(pkg string, nearest []string) ([]string, error) {
	list, err := exec.Command("go", "list", "-test", "-f", `{{if .ForTest}}{{.ForTest}} {{join .Deps " "}}{{end}}`, "./...").Output()
	if err != nil {
		return nil, fmt.Errorf("go list -test: %w", err)
	}
	out := nearest
	for line := range strings.Lines(string(list)) {
		words := strings.Fields(line)
		if len(words) == 0 {
			continue
		}
		near := slices.ContainsFunc(out, func(p string) bool { return strings.TrimPrefix(p, "./") == strings.TrimPrefix(words[0], "newmake/") })
		if !near && words[0] != pkg && slices.ContainsFunc(words[1:], func(dep string) bool { d, _, _ := strings.Cut(dep, " ["); return d == pkg }) {
			out = append(out, words[0])
		}
	}
	return out, nil
}

// changesIn lists every change that could be made in some packages.
func changesIn(all map[string][]source, at string) ([]*change, error) {
	top, err := os.Getwd()
	if err != nil {
		return nil, err
	}
	var out []*change
	for pkg, files := range all {
		for _, file := range files {
			name, err := filepath.Rel(top, file.name)
			if err != nil {
				return nil, err
			}
			if strings.HasPrefix(name, at) {
				out = append(out, changes(pkg, file, name)...)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b *change) int { return strings.Compare(a.name, b.name) })
	return out, nil
}
