//go:build unix

package main

import (
	"bytes"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// hostile is a house in a repository that somebody else has made, and a program,
// the canary, that the repository would have git run.
type hostile struct {
	t      *testing.T
	top    string // of the working tree
	canary string // the program
	ran    string // it writes here that it ran
	env    []string
	bin    string // the folder of the canary, and of what is on the path by other names
}

func newHostile(t *testing.T) *hostile {
	dir := t.TempDir()
	h := &hostile{t: t, top: filepath.Join(dir, "house"), bin: filepath.Join(dir, "bin"), ran: filepath.Join(dir, "ran")}
	h.canary = filepath.Join(h.bin, "canary")
	personal := func(v string) bool { // what of the environment would run in place of what the repository names
		return strings.HasPrefix(v, "GIT_") || strings.HasPrefix(v, "SSH_ASKPASS=") || strings.HasPrefix(v, "PAGER=")
	}
	h.env = append(slices.DeleteFunc(os.Environ(), personal), "HOME="+dir, "XDG_CONFIG_HOME="+dir, "GIT_CONFIG_NOSYSTEM=1", "GIT_CONFIG_GLOBAL=/dev/null",
		"GIT_AUTHOR_NAME=S", "GIT_AUTHOR_EMAIL=s@example.org", "GIT_COMMITTER_NAME=S", "GIT_COMMITTER_EMAIL=s@example.org", "TERM=xterm")
	h.program(h.canary)
	return h
}

// commits makes the repository, with two commits. Others are copied from it.
func (h *hostile) commits() {
	for _, name := range []string{"house.batch", "toll-road.batch"} {
		text, err := os.ReadFile(filepath.Join("../../examples/lantern-hollow", name))
		require.NoError(h.t, err)
		h.write(name, string(text))
	}
	h.git("init", "-q", "-b", "main", ".")
	h.git("add", ".")
	h.git("commit", "-q", "-m", "first")
	h.change()
	h.git("commit", "-q", "-a", "-m", "second")
}

// program writes a program that says that it ran, and does nothing else.
func (h *hostile) program(at string) {
	require.NoError(h.t, os.MkdirAll(filepath.Dir(at), 0o755))
	require.NoError(h.t, os.WriteFile(at, []byte("#!/bin/sh\necho \"$0 $*\" >>'"+h.ran+"'\n"), 0o755))
}

func (h *hostile) write(name, text string) {
	at := filepath.Join(h.top, name)
	require.NoError(h.t, os.MkdirAll(filepath.Dir(at), 0o755))
	require.NoError(h.t, os.WriteFile(at, []byte(text), 0o644))
}

// change makes the recipe another one, of the same length, so that git must read
// it to know.
func (h *hostile) change() {
	at := filepath.Join(h.top, "toll-road.batch")
	text, err := os.ReadFile(at)
	require.NoError(h.t, err)
	now := bytes.Replace(text, []byte("61 % abv"), []byte("60 % abv"), 1)
	if bytes.Equal(now, text) {
		now = bytes.Replace(text, []byte("60 % abv"), []byte("61 % abv"), 1)
	}
	require.NotEqual(h.t, text, now)
	require.NoError(h.t, os.WriteFile(at, now, 0o644))
}

// attempt runs a program in the house, whatever comes of it. None waits for ever.
func (h *hostile) attempt(name string, args ...string) string {
	cmd := exec.Command(name, args...)
	cmd.Dir, cmd.Env = h.top, h.env
	cmd.WaitDelay = time.Second
	stop := time.AfterFunc(20*time.Second, func() { cmd.Process.Kill() })
	defer stop.Stop()
	out, _ := cmd.CombinedOutput()
	return string(out)
}

func (h *hostile) git(args ...string) string {
	cmd := exec.Command("git", args...)
	cmd.Dir, cmd.Env = h.top, h.env
	out, err := cmd.CombinedOutput()
	require.NoError(h.t, err, "git %v: %s", args, out)
	return strings.TrimSpace(string(out))
}

func (h *hostile) config(pairs ...string) {
	for i := 0; i < len(pairs); i += 2 {
		h.git("config", pairs[i], pairs[i+1])
	}
}

// runs is what the canary was called as, and forgets it.
func (h *hostile) runs() string {
	text, _ := os.ReadFile(h.ran)
	os.Remove(h.ran)
	return string(text)
}

// promised makes of the repository a partial clone that lacks the trees and texts
// of its commits, and has a remote that promised them.
func (h *hostile) promised(url string) {
	head := h.git("rev-parse", "HEAD")
	packed := h.git("rev-list", "HEAD")
	bare := filepath.Join(filepath.Dir(h.top), "promisor.git")
	h.git("clone", "-q", "--bare", ".", bare)
	h.git("-C", bare, "config", "uploadpack.allowFilter", "true")
	h.git("-C", bare, "config", "uploadpack.allowAnySHA1InWant", "true")
	require.NoError(h.t, os.RemoveAll(filepath.Join(h.top, ".git")))
	clone := filepath.Join(filepath.Dir(h.top), "clone")
	h.git("clone", "-q", "--no-checkout", "--filter=tree:0", "file://"+bare, clone)
	require.NoError(h.t, os.Rename(filepath.Join(clone, ".git"), filepath.Join(h.top, ".git")))
	require.Equal(h.t, head, h.git("rev-parse", "HEAD"))
	require.Equal(h.t, packed, h.git("rev-list", "HEAD"))
	if url == "" {
		url = bare
	}
	h.config("remote.origin.url", url)
	h.runs()
}

// attack is one way in which git runs a program that the repository names.
type attack struct {
	name  string
	arm   func(h *hostile)
	live  []string         // what shows that it is one: a call of plain git
	reset func(h *hostile) // before newmake is tried
}

func attacks(t *testing.T) []attack {
	unauthorized := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("WWW-Authenticate", `Basic realm="x"`)
		w.WriteHeader(http.StatusUnauthorized)
	}))
	t.Cleanup(unauthorized.Close)
	promise := func(url string, pairs ...string) func(*hostile) {
		return func(h *hostile) {
			h.promised(url)
			for i := 1; i < len(pairs); i += 2 {
				pairs[i] = strings.ReplaceAll(pairs[i], "CANARY", h.canary)
			}
			h.config(pairs...)
		}
	}
	lazily := []string{"ls-tree", "HEAD"}
	return []attack{
		{name: "filter clean", live: []string{"status"}, arm: func(h *hostile) {
			h.config("filter.f.clean", h.canary)
			h.write(".git/info/attributes", "* filter=f\n")
			h.change()
		}},
		{name: "filter smudge", live: []string{"checkout", "--", "."}, arm: func(h *hostile) {
			h.config("filter.f.smudge", h.canary)
			h.write(".git/info/attributes", "* filter=f\n")
			h.change()
		}, reset: func(h *hostile) { h.git("-c", "filter.f.smudge=cat", "checkout", "--", ".") }},
		{name: "filter process", live: []string{"status"}, arm: func(h *hostile) {
			h.config("filter.f.process", h.canary+" </dev/null")
			h.write(".gitattributes", "*.batch filter=f\n")
			h.change()
		}},
		{name: "fsmonitor", live: []string{"status"}, arm: func(h *hostile) { h.config("core.fsmonitor", h.canary) }},
		{name: "fsmonitor of an include", live: []string{"status"}, arm: func(h *hostile) {
			h.write("notes/config", "[core]\n\tfsmonitor = "+h.canary+"\n")
			h.config("include.path", "../notes/config")
		}},
		{name: "fsmonitor of the worktree's config", live: []string{"status"}, arm: func(h *hostile) {
			h.config("core.repositoryFormatVersion", "1", "extensions.worktreeConfig", "true")
			h.git("config", "--worktree", "core.fsmonitor", h.canary)
		}},
		{name: "a .git file that leads elsewhere", live: []string{"status"}, arm: func(h *hostile) {
			h.config("core.fsmonitor", h.canary)
			elsewhere := filepath.Join(filepath.Dir(h.top), "elsewhere")
			require.NoError(h.t, os.Rename(filepath.Join(h.top, ".git"), elsewhere))
			h.write(".git", "gitdir: ../elsewhere\n")
		}},
		{name: "a committed folder in the shape of a bare repository", live: []string{"status"}, arm: func(h *hostile) {
			h.config("core.bare", "false", "core.worktree", ".", "core.fsmonitor", h.canary)
			git := filepath.Join(h.top, ".git")
			for _, name := range []string{"HEAD", "config", "objects", "refs", "index"} {
				require.NoError(h.t, os.Rename(filepath.Join(git, name), filepath.Join(h.top, name)))
			}
			require.NoError(h.t, os.RemoveAll(git))
		}},
		{name: "a submodule's clean filter", live: []string{"status"}, arm: func(h *hostile) {
			h.git("init", "-q", "sub")
			h.write("sub/note", "one\n")
			h.git("-C", "sub", "add", ".")
			h.git("-C", "sub", "commit", "-q", "-m", "sub")
			h.git("-c", "advice.addEmbeddedRepo=false", "add", "sub")
			h.git("commit", "-q", "-m", "sub")
			h.git("-C", "sub", "config", "filter.f.clean", h.canary)
			h.write("sub/.git/info/attributes", "* filter=f\n")
			h.write("sub/note", "two\n")
		}},
		{name: "textconv", live: []string{"diff"}, arm: func(h *hostile) {
			h.config("diff.d.textconv", h.canary)
			h.write(".git/info/attributes", "* diff=d\n")
			h.change()
		}},
		{name: "external diff", live: []string{"diff"}, arm: func(h *hostile) { h.config("diff.external", h.canary); h.change() }},
		{name: "external diff of the log", live: []string{"log", "-p", "--ext-diff"}, arm: func(h *hostile) { h.config("diff.external", h.canary) }},
		{name: "diff driver", live: []string{"diff"}, arm: func(h *hostile) {
			h.config("diff.d.command", h.canary)
			h.write(".git/info/attributes", "* diff=d\n")
			h.change()
		}},
		{name: "pager", live: []string{"log"}, arm: func(h *hostile) { h.config("core.pager", h.canary) }},
		{name: "pager of a command", live: []string{"rev-list", "HEAD"}, arm: func(h *hostile) {
			for _, c := range []string{"rev-list", "rev-parse", "ls-tree", "ls-files", "cat-file", "diff-index", "config", "merge-base"} {
				h.config("pager."+c, h.canary)
			}
		}},
		{name: "hooks", live: []string{"add", "."}, arm: func(h *hostile) {
			for _, name := range []string{"post-index-change", "pre-commit", "prepare-commit-msg", "commit-msg", "post-commit", "reference-transaction", "post-checkout", "pre-auto-gc", "post-rewrite"} {
				h.program(filepath.Join(h.top, ".git", "hooks", name))
			}
			h.change()
		}, reset: stageUntidy},
		{name: "hooks of a path", live: []string{"add", "."}, arm: func(h *hostile) {
			h.program(filepath.Join(h.top, "hooks", "post-index-change"))
			h.config("core.hooksPath", "hooks")
			h.change()
		}, reset: stageUntidy},
		{name: "gpg", live: []string{"log"}, arm: func(h *hostile) {
			signed := h.git("cat-file", "commit", "HEAD")
			head, message, _ := strings.Cut(signed, "\n\n")
			h.write("signed", head+"\ngpgsig -----BEGIN PGP SIGNATURE-----\n \n x\n -----END PGP SIGNATURE-----\n\n"+message+"\n")
			h.git("reset", "-q", "--soft", h.git("hash-object", "-t", "commit", "-w", "signed"))
			h.config("log.showSignature", "true", "gpg.program", h.canary)
		}},
		{name: "editor", live: []string{"commit", "--amend"}, arm: func(h *hostile) { h.config("core.editor", h.canary+" </dev/null") }},
		{name: "alias", live: []string{"st"}, arm: func(h *hostile) {
			for _, c := range []string{"st", "rev-parse", "rev-list", "ls-tree", "ls-files", "cat-file", "diff-index", "config", "update-index", "hash-object"} {
				h.config("alias."+c, "!"+h.canary+" </dev/null")
			}
		}},
		{name: "merge driver", arm: func(h *hostile) {
			h.config("merge.m.driver", h.canary)
			h.write(".git/info/attributes", "* merge=m\n")
			h.git("checkout", "-q", "-b", "other", "HEAD~1")
			h.write("toll-road.batch", "# other\n")
			h.git("commit", "-q", "-a", "-m", "other")
			h.git("checkout", "-q", "main")
		}, live: []string{"merge", "--no-edit", "other"}, reset: func(h *hostile) { h.git("reset", "-q", "--hard", "main") }},
		{name: "alternates", live: []string{"fetch", "origin"}, arm: func(h *hostile) {
			other := filepath.Join(filepath.Dir(h.top), "other.git")
			h.git("clone", "-q", "--bare", ".", other)
			h.git("-C", other, "fetch", "-q", ".", "main:more")
			h.write(".git/objects/info/alternates", filepath.Join(other, "objects")+"\n")
			h.config("core.alternateRefsCommand", h.canary+" </dev/null; :", "remote.origin.url", other, "remote.origin.fetch", "refs/heads/*:refs/remotes/origin/*")
		}},
		{name: "promisor by uploadpack", live: lazily, arm: promise("", "remote.origin.uploadpack", "CANARY")},
		{name: "promisor by ext", live: lazily, arm: func(h *hostile) { promise("ext::"+h.canary+" x", "protocol.ext.allow", "always")(h) }},
		{name: "promisor by ssh", live: lazily, arm: promise("ssh://example.invalid/x", "core.sshCommand", "CANARY")},
		{name: "promisor by a proxy", live: lazily, arm: promise("git://example.invalid/x", "core.gitProxy", "CANARY")},
		{name: "promisor by a credential helper", live: lazily, arm: promise(unauthorized.URL+"/x", "credential.helper", "!CANARY")},
		{name: "promisor by askpass", live: lazily, arm: promise(unauthorized.URL+"/x", "core.askPass", "CANARY")},
		{name: "promisor by a helper of its own", live: lazily, arm: func(h *hostile) {
			h.program(filepath.Join(h.bin, "git-remote-canary"))
			h.env = append(h.env, "PATH="+h.bin+":"+os.Getenv("PATH"))
			promise("x", "remote.origin.vcs", "canary")(h)
		}},
	}
}

// stageUntidy stages a text that is not laid out, so that the hook writes it into
// the index.
func stageUntidy(h *hostile) {
	at := filepath.Join(h.top, "toll-road.batch")
	text, err := os.ReadFile(at)
	require.NoError(h.t, err)
	require.NoError(h.t, os.WriteFile(at, bytes.Replace(text, []byte("\n  start"), []byte("\n     start"), 1), 0o644))
	h.git("-c", "core.hooksPath=/dev/null", "add", "toll-road.batch")
}

// touching are the commands that call git, or stand where git would be called.
var touching = [][]string{
	{"git-setup", "--staged"},
	{"plan", "toll-road.batch"},
	{"plan", "toll-road.batch", "--format", "json"},
	{"plan", "toll-road.batch", "-o", "../sheet.html"},
	{"plan", "--variants", "toll-road.batch"},
	{"check", "."},
	{"why", "toll-road.batch", "hearts"},
	{"size", "toll-road.batch", "--casks", "2"},
	{"odds", "toll-road.batch", "--draws", "50"},
	{"tastings"},
	{"fmt", "--diff", "."},
	{"diff", "--why", "none", "toll-road.batch"},
	{"diff", "--why", "none", "HEAD~1"},
	{"diff", "--why", "none", "HEAD~1", "--", "toll-road.batch"},
	{"diff", "--why", "none", "HEAD~1..HEAD"},
	{"diff", "--why", "none", "HEAD~1...HEAD"},
	{"diff", "--why", "none", "HEAD~1:toll-road.batch", "toll-road.batch"},
	{"diff", "--each", "HEAD~1..HEAD"},
	{"init", "../new"},
	{"git-setup"},
	{"git-setup", "--apply"},
	{"git-setup", "--remove"},
}

// Whatever git would run for the repository's sake, no command has it run. Each
// attack is shown to be one, with plain git, where it stands.
func TestNothingOfARepositoryRuns(t *testing.T) {
	every := testflag.Every(22) // otherwise each attack meets one of the commands, and each command an attack
	made := newHostile(t)
	made.commits()
	for i, a := range attacks(t) {
		t.Run(a.name, func(t *testing.T) {
			t.Parallel()
			h := newHostile(t)
			require.NoError(t, os.CopyFS(h.top, os.DirFS(made.top)))
			a.arm(h)
			h.runs()
			git := append([]string{"git"}, a.live...)
			onTerminal := strings.HasPrefix(a.name, "pager")
			if onTerminal {
				if runtime.GOOS != "linux" {
					t.Skip("script(1) is called otherwise here") // what is asked of git is the same on each system
				}
				git = []string{"script", "-qec", strings.Join(git, " "), "/dev/null"}
			}
			said := h.attempt(git[0], git[1:]...)
			require.NotEmpty(t, h.runs(), "plain git does not run it, so the test would show nothing: %s", said)
			if a.reset != nil {
				a.reset(h)
				h.runs()
			}
			for j, args := range touching {
				if (i+j)%every != 0 {
					continue
				}
				call := append([]string{"newmake"}, args...)
				if onTerminal {
					call = []string{"script", "-qec", strings.Join(call, " "), "/dev/null"}
				}
				said := h.attempt(call[0], call[1:]...)
				assert.Empty(t, h.runs(), "%v: %s", args, said)
				assert.NotContains(t, said, "goroutine", "%v", args)
			}
			if i%every == 0 {
				assert.Empty(t, h.watched(), "plan --watch")
			}
		})
	}
}

// watched plans, again after a change, and is interrupted.
func (h *hostile) watched() string {
	cmd := exec.Command("newmake", "plan", "--watch", "toll-road.batch")
	cmd.Dir, cmd.Env = h.top, h.env
	out := &heard{}
	cmd.Stdout, cmd.Stderr = out, out
	require.NoError(h.t, cmd.Start())
	planned := func() int { return strings.Count(out.String(), "Toll Road") }
	require.Eventually(h.t, func() bool { return planned() > 0 }, 10*time.Second, 10*time.Millisecond, "%s", out)
	before := planned()
	h.change()
	require.Eventually(h.t, func() bool { return planned() > before }, 10*time.Second, 10*time.Millisecond, "%s", out)
	require.NoError(h.t, cmd.Process.Signal(syscall.SIGINT))
	_ = cmd.Wait()
	return h.runs()
}
