package gitrepo

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"newmake/lang/diag"
)

// commands are what is asked of git, and all that may be asked: plumbing that
// reads objects, refs and the index, and that neither looks at the working tree
// nor runs a filter on it. status, log, diff, show and add do.
var commands = []string{
	"cat-file", "config", "diff-index", "hash-object", "ls-files", "ls-tree",
	"merge-base", "rev-list", "rev-parse", "update-index",
}

// settings override what the repository's own configuration says.
var settings = []string{
	"core.fsmonitor=false",         // a program that knows what changed
	hooksPath + "=/dev/null",       // update-index runs post-index-change
	"safe.bareRepository=explicit", // a folder that was committed in the shape of a bare repository is none
	"core.quotePath=false",
	"i18n.logOutputEncoding=UTF-8",
	// Nothing above reaches these. They are a second fence, should git change.
	"core.pager=cat",
	"core.editor=false",
	"core.askPass=false",
	"core.sshCommand=false",
	"core.gitProxy=false",
	"core.alternateRefsCommand=false",
	"credential.helper=",
	"gpg.program=false",
	"gpg.ssh.program=false",
	"gpg.x509.program=false",
	"log.showSignature=false",
}

const hooksPath = "core.hooksPath"

// variables are set for git, whatever the environment says.
var variables = []string{
	"GIT_NO_LAZY_FETCH=1",      // what a partial clone lacks is not fetched (git 2.45, and 2.39.4 and its like)
	"GIT_ALLOW_PROTOCOL=none",  // an older git tries to fetch, and no transport is allowed
	"GIT_NO_REPLACE_OBJECTS=1", // a revision is what its hash says
	"GIT_ALLOC_LIMIT=512m",     // of one allocation: the base of a small delta may be huge (wrapper.c of git)
	"GIT_OPTIONAL_LOCKS=0",
	"GIT_TERMINAL_PROMPT=0",
	"GIT_PAGER=cat",
	"LC_ALL=C",
}

// Of the GIT_ variables of the environment some say which configuration is the
// person's own, and where repositories end.
var personal = []string{"GIT_CEILING_DIRECTORIES", "GIT_DISCOVERY_ACROSS_FILESYSTEM"}

// Others say where the repository is. They are heard only where git itself has
// called, and meant its own repository; elsewhere they may be those of another.
var location = []string{
	"GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_COMMON_DIR",
	"GIT_OBJECT_DIRECTORY", "GIT_ALTERNATE_OBJECT_DIRECTORIES",
}

// environment is what git is given of ours: of its own variables only those
// above, since others name programs to run and files to write.
func environment(from []string, inHook bool) []string {
	var out []string
	for _, v := range from {
		name, _, _ := strings.Cut(v, "=")
		name = strings.ToUpper(name) // Windows knows no case
		switch {
		case name == "LC_ALL":
		case !strings.HasPrefix(name, "GIT_"), strings.HasPrefix(name, "GIT_CONFIG_"), slices.Contains(personal, name):
			out = append(out, v)
		case inHook && slices.Contains(location, name):
			out = append(out, v)
		}
	}
	return append(out, variables...)
}

// limits are what git may take and answer.
type limits struct {
	patience    time.Duration // a pipe in place of a file would keep git waiting for ever
	outputBytes int           // a small tree may list without end
	treeBytes   int           // of all recipes of a tree
}

func usual() limits {
	return limits{patience: 15 * time.Second, outputBytes: 128 << 20, treeBytes: 256 << 20}
}

// command is git as it is always called: it runs no program that the repository
// names, fetches nothing, and waits for nobody.
func (r *Repo) command(ctx context.Context, args ...string) (*exec.Cmd, error) {
	if !slices.Contains(commands, args[0]) {
		return nil, fmt.Errorf("git %s is not called by newmake", args[0])
	}
	all := []string{"--no-pager", "--no-optional-locks"}
	for _, s := range settings {
		if name, _, _ := strings.Cut(s, "="); name == hooksPath && asksForHooks(args) {
			continue
		}
		all = append(all, "-c", s)
	}
	cmd := exec.CommandContext(ctx, "git", append(all, args...)...)
	cmd.Dir = r.Dir
	cmd.Env = environment(os.Environ(), r.inHook)
	cmd.WaitDelay = time.Second // a child of git may hold the pipe
	return cmd, nil
}

// asksForHooks reports whether a call is to tell where the hooks are. Such a call runs
// none.
func asksForHooks(args []string) bool {
	return args[0] == "config" && slices.Contains(args, hooksPath) ||
		args[0] == "rev-parse" && slices.Contains(args, "--git-path")
}

// run calls git and gives what it prints. The error is in git's own words.
func (r *Repo) run(args ...string) (string, error) {
	return r.runWith(nil, args...)
}

// runWith is run with a standard input.
func (r *Repo) runWith(input []byte, args ...string) (string, error) {
	if r.mute.Load() {
		return "", r.noAnswer()
	}
	ctx, cancel := context.WithTimeout(context.Background(), r.limits.patience)
	defer cancel()
	cmd, err := r.command(ctx, args...)
	if err != nil {
		return "", err
	}
	cmd.Stdin = bytes.NewReader(input)
	out, say := &bounded{most: r.limits.outputBytes}, &bounded{most: 64 << 10}
	cmd.Stdout, cmd.Stderr = out, say
	err = cmd.Run()
	switch {
	case out.over:
		return "", fmt.Errorf("git %s: the answer is longer than %d MiB, so it was not read", args[0], r.limits.outputBytes>>20)
	case err != nil && ctx.Err() != nil:
		r.mute.Store(true)
		return "", r.noAnswer()
	case err != nil:
		words, _, _ := strings.Cut(strings.TrimSpace(say.taken.String()), "\n")
		if words = strings.TrimPrefix(strings.TrimPrefix(words, "fatal: "), "error: "); words == "" {
			words = err.Error()
		}
		return "", fmt.Errorf("git %s: %s", args[0], diag.Safe(words))
	}
	return out.taken.String(), nil
}

// ErrNoAnswer says that git waits for something in the repository, such as a pipe
// in the place of a file. It is asked nothing more.
var ErrNoAnswer = errors.New("git gives no answer")

func (r *Repo) noAnswer() error {
	return fmt.Errorf("%w within %v: look at what is odd in %s", ErrNoAnswer, r.limits.patience, filepath.Join(r.Dir, ".git"))
}

// bounded takes no more than so many bytes. The buffer is not embedded: what it
// reads by itself would not be counted.
type bounded struct {
	taken bytes.Buffer
	most  int
	over  bool
}

var errOver = errors.New("too much")

func (b *bounded) Write(p []byte) (int, error) {
	if b.taken.Len()+len(p) > b.most {
		b.over = true
		return 0, errOver
	}
	return b.taken.Write(p)
}
