// Package revision says from which text a plan was made, and checks what is staged
// to be committed. It is the part of the front that asks git.
package revision

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"newmake/compile/front"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/gitrepo"
	"newmake/lang/recipe"
	"newmake/lang/schema"
)

// shortHash is how many hex digits of a revision or a hash are shown.
const shortHash = 12

// Of says from which text a batch was planned: the commit that last
// changed its sources and whether they have been changed since, as git says it,
// and a hash of the texts for where there is no git. It never looks at a clock. A
// note says why there is no revision where there could be one.
func Of(src *front.Source, batch string) (out *plan.Source, note string) {
	b, _ := src.House.Batch(batch)
	if b == nil {
		return nil, ""
	}
	files := sourcesOf(src, b)
	out = &plan.Source{Hash: hashOf(src, files)}
	if at := b.Where[recipe.PathBatch]; at.Src != nil {
		out.File = below(src.House.Root, at.Src.Name)
	} else {
		out.File = below(src.House.Root, src.Path)
	}
	var names []string
	var texts [][]byte
	for _, f := range files {
		names, texts = append(names, f.Name), append(texts, f.Text)
	}
	if gitrepo.None(src.House.Root) {
		return out, ""
	}
	repo, err := gitrepo.Open(src.House.Root)
	if err != nil {
		return out, unanswered(err) // no git, or no repository: the hash alone
	}
	var same bool
	var errHead error
	var asked sync.WaitGroup
	asked.Go(func() { same, errHead = repo.AtHead(names, texts) })
	revision, err := repo.LastChange(names)
	asked.Wait()
	if err != nil || len(revision) < shortHash {
		return out, unanswered(err) // none of them was ever committed
	}
	out.Revision, out.Changed = revision[:shortHash], errHead != nil || !same
	return out, unanswered(errHead)
}

func unanswered(err error) string {
	if errors.Is(err, gitrepo.ErrNoAnswer) {
		return fmt.Sprintf("the plan has no revision: %v", err)
	}
	return ""
}

// Begin is Of while something else is computed: what it gives waits for the
// answer.
func Begin(src *front.Source, batch string) func() (*plan.Source, string) {
	var out *plan.Source
	var note string
	done := make(chan struct{})
	go func() {
		defer close(done)
		out, note = Of(src, batch)
	}()
	return func() (*plan.Source, string) {
		<-done
		return out, note
	}
}

// sourcesOf are the texts that a batch is made of, in the order of their paths:
// its own, those of the batches that it varies, and those of the house that
// declare anything else than batches and records: plant, library, models.
func sourcesOf(src *front.Source, b *recipe.Batch) []*diag.Source {
	used := map[*diag.Source]bool{}
	for _, at := range b.Where {
		used[at.Src] = true
	}
	var out []*diag.Source
	for _, f := range src.House.Files {
		for _, word := range f.Heads() {
			if !isAlone(word) {
				used[f.Source] = true
			}
		}
		if used[f.Source] {
			out = append(out, f.Source)
		}
	}
	slices.SortFunc(out, func(a, b *diag.Source) int { return strings.Compare(a.Name, b.Name) })
	return out
}

// isAlone reports whether no other batch depends on a declaration: it is a batch, or of what
// happened.
func isAlone(word string) bool {
	f := schema.Language.Find(word)
	return word == schema.Batch.Name || f != nil && f.Past
}

func hashOf(src *front.Source, files []*diag.Source) string {
	h := sha256.New()
	for _, f := range files {
		fmt.Fprintf(h, "%s\x00%d\x00", below(src.House.Root, f.Name), len(f.Text))
		h.Write(f.Text)
	}
	return hex.EncodeToString(h.Sum(nil))[:shortHash]
}

// below is a path below the house, with slashes, the same wherever the house
// lies.
func below(root, name string) string {
	from, err := filepath.Abs(root)
	if err == nil {
		if full, err := filepath.Abs(name); err == nil {
			if rel, err := filepath.Rel(from, full); err == nil {
				return filepath.ToSlash(rel)
			}
		}
	}
	return filepath.ToSlash(name)
}
