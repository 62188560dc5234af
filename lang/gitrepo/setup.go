package gitrepo

import (
	"path/filepath"
	"regexp"
	"strings"
)

// Setting is a value of the repository's own configuration.
func (r *Repo) Setting(key string) (value string, ok bool) {
	out, err := r.run("config", "--local", "--get", key)
	return strings.TrimSuffix(out, "\n"), err == nil
}

// Set writes a value into the repository's own configuration.
func (r *Repo) Set(key, value string) error {
	_, err := r.run("config", "--local", key, value)
	return err
}

// Unset takes a value out of the repository's own configuration, and the head of
// its section with the last one.
func (r *Repo) Unset(key string) error {
	if _, err := r.run("config", "--local", "--unset", key); err != nil {
		return err
	}
	section := key[:strings.LastIndex(key, ".")]
	if _, err := r.run("config", "--local", "--get-regexp", "^"+regexp.QuoteMeta(section)+`\.`); err != nil {
		_, _ = r.run("config", "--local", "--remove-section", section) // older git leaves the head, and newer has none left
	}
	return nil
}

// Hook is the file of a hook, there or not.
func (r *Repo) Hook(name string) (string, error) {
	out, err := r.run("rev-parse", "--git-path", "hooks/"+name)
	if err != nil {
		return "", err
	}
	path := filepath.FromSlash(strings.TrimSuffix(out, "\n"))
	if !filepath.IsAbs(path) {
		path = filepath.Join(r.Dir, path)
	}
	return filepath.Abs(path)
}

// HooksElsewhere reports whether the hooks are kept outside the repository.
func (r *Repo) HooksElsewhere() bool {
	path, err := r.run("config", "--get", hooksPath)
	return err == nil && strings.TrimSpace(path) != ""
}
