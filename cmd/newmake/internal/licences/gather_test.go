package licences

import (
	"bytes"
	"cmp"
	"fmt"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// program is what the modules are linked into.
const program = "newmake/cmd/newmake"

// systems are those that newmake is built for. Some modules are linked in on one
// of them only.
var systems = []string{"linux", "darwin", "windows"}

// module is something that is linked in.
type module struct {
	path, version, folder string
	licences              []licence
}

// licence is one text that a module carries.
type licence struct {
	file, kind, text string
}

// TestLinked: the embedded texts are those of the modules that are linked in now.
func TestLinked(t *testing.T) {
	want := page(gather(t))
	if testflag.Update() {
		require.NoError(t, os.WriteFile("linked.txt", []byte(want), 0o644))
		return
	}
	if Linked != want {
		t.Fatal("linked.txt is not what is linked in now: go test ./cmd/newmake/internal/licences -update")
	}
}

// TestGatherersStayOut: what only tests use is not linked in.
func TestGatherersStayOut(t *testing.T) {
	all := gather(t)
	has := func(p string) bool {
		return slices.ContainsFunc(all, func(m module) bool { return m.path == p })
	}
	assert.True(t, has("github.com/spf13/cobra"))
	assert.False(t, has("github.com/stretchr/testify"))
	assert.False(t, has("github.com/rogpeppe/go-internal"))
}

// gather finds the modules of the program's packages and reads their licences. A
// module without one fails the test, and so does a licence of a kind that is not
// known here: somebody has to read it.
func gather(t *testing.T) []module {
	t.Helper()
	_, err := os.ReadFile("../../../../go.mod") // so that a result is not taken from before it changed
	require.NoError(t, err)
	found := map[string]module{}
	for _, system := range systems {
		list := run(t, []string{"GOOS=" + system, "GOARCH=amd64", "CGO_ENABLED=0"}, "list", "-deps",
			"-f", "{{with .Module}}{{if not .Main}}{{.Path}}\t{{.Version}}\t{{.Dir}}{{end}}{{end}}", program)
		for line := range strings.Lines(list) {
			part := strings.Split(strings.TrimSpace(line), "\t")
			require.Len(t, part, 3, "%s", line)
			require.NotEmpty(t, part[2], "%s is not in the module cache", part[0])
			found[part[0]] = module{path: part[0], version: part[1], folder: part[2]}
		}
	}
	found["Go"] = module{path: "Go", version: "runtime and standard library", folder: strings.TrimSpace(run(t, nil, "env", "GOROOT"))}
	var all []module
	for _, m := range found {
		m.licences = read(t, m.folder)
		require.NotEmpty(t, m.licences, "%s carries no licence that is found", m.path)
		for _, l := range m.licences {
			require.NotEmpty(t, l.kind, "%s: the kind of %s is not known here: read it, and add it to kinds", m.path, l.file)
		}
		all = append(all, m)
	}
	slices.SortFunc(all, func(a, b module) int { return cmp.Compare(a.path, b.path) })
	return all
}

func run(t *testing.T, env []string, args ...string) string {
	t.Helper()
	c := exec.Command("go", args...)
	c.Env = append(os.Environ(), env...)
	var said bytes.Buffer
	c.Stderr = &said
	out, err := c.Output()
	require.NoError(t, err, "go %v: %s", args, said.String())
	return string(out)
}

// bears are the names of files that hold a licence, or what must go with one.
var bears = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|patents|third.party)`)

// read reads the licences at the top of a module, and those of what it took from
// others, which stand in a folder there.
func read(t *testing.T, folder string) []licence {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	var all []licence
	for _, e := range entries {
		switch {
		case !bears.MatchString(e.Name()):
		case e.IsDir():
			inner, err := os.ReadDir(filepath.Join(folder, e.Name()))
			require.NoError(t, err)
			for _, i := range inner {
				all = append(all, readOne(t, folder, path.Join(e.Name(), i.Name())))
			}
		default:
			all = append(all, readOne(t, folder, e.Name()))
		}
	}
	return all
}

func readOne(t *testing.T, folder, name string) licence {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(folder, filepath.FromSlash(name)))
	require.NoError(t, err)
	text := strings.ReplaceAll(string(data), "\r\n", "\n")
	return licence{file: name, kind: kindOf(text), text: strings.Trim(text, "\n")}
}

// kinds are what licences are known by, the narrower first: a text is of a kind
// if it has all of its phrases. Names are those of the SPDX licence list, if they
// are in it.
var kinds = []struct {
	name    string
	phrases []string
}{
	{"Apache-2.0", []string{"Apache License", "Version 2.0, January 2004"}},
	{"BSL-1.0", []string{"Boost Software License - Version 1.0"}},
	{"BSD-3-Clause", []string{"Redistribution and use in source and binary forms", "endorse or promote products derived from"}},
	{"BSD-2-Clause", []string{"Redistribution and use in source and binary forms"}},
	{"MIT", []string{"Permission is hereby granted, free of charge, to any person obtaining a copy", "THE SOFTWARE IS PROVIDED"}},
	{"SunPro's terms", []string{"Permission to use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved"}},
	{"W3C test suite licence", []string{"World Wide Web Consortium", "Permission to copy, and distribute the contents of this document"}},
	{"a disclaimer", []string{"This software package is based on the paper", `THIS SOFTWARE IS PROVIDED "AS IS"`}},
	{"a grant of patents", []string{"Additional IP Rights Grant (Patents)"}},
}

// kindOf is the kind of a licence's text, or "".
func kindOf(text string) string {
	flat := strings.Join(strings.Fields(text), " ")
	for _, k := range kinds {
		if !slices.ContainsFunc(k.phrases, func(p string) bool { return !strings.Contains(flat, p) }) {
			return k.name
		}
	}
	return ""
}

func TestKindOf(t *testing.T) {
	for text, want := range map[string]string{
		"Redistribution and use in source\nand binary forms ... may be used to endorse or  promote products derived from": "BSD-3-Clause",
		"Redistribution and use in source and binary forms":                                                               "BSD-2-Clause",
		"Apache License\n Version 2.0, January 2004":                                                                      "Apache-2.0",
		"Apache License\n Version 1.1":                                                                                    "",
		"All rights reserved.":                                                                                            "",
	} {
		assert.Equal(t, want, kindOf(text), text)
	}
}

// page lists the modules and gives their texts after that. A text that several
// have word for word stands once.
func page(all []module) string {
	var list, whole strings.Builder
	carriers := map[string][]string{}
	var order []licence
	width := 0
	for _, m := range all {
		width = max(width, len(m.path+" "+m.version))
	}
	for _, m := range all {
		var of []string
		for _, l := range m.licences {
			if !slices.Contains(of, l.kind) {
				of = append(of, l.kind)
			}
			if carriers[l.text] == nil {
				order = append(order, l)
			}
			carriers[l.text] = append(carriers[l.text], m.path+", "+l.file)
		}
		fmt.Fprintf(&list, "  %-*s  %s\n", width, m.path+" "+m.version, strings.Join(of, ", "))
	}
	for _, l := range order {
		fmt.Fprintf(&whole, "\n%s\n%s\n%s\n\n%s\n", rule, strings.Join(carriers[l.text], "\n"), rule, l.text)
	}
	return list.String() + whole.String()
}

var rule = strings.Repeat("-", 78)
