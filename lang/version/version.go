// Package version says which newmake this is, from what the Go tool wrote into it.
package version

import "runtime/debug"

// Of is the module's version, or the revision that the program was built from.
func Of() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	if v := info.Main.Version; v != "" && v != "(devel)" {
		return v
	}
	revision, changed := "", ""
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision":
			revision = s.Value
		case s.Key == "vcs.modified" && s.Value == "true":
			changed = ", changed since"
		}
	}
	if len(revision) >= 12 {
		return "revision " + revision[:12] + changed
	}
	return "of no stated revision"
}
