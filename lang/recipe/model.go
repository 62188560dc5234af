package recipe

import (
	"fmt"
	"strings"
)

// Model is the constants of a published model, each by name in SI, so that a
// house can tune them to its own runs.
type Model struct {
	Entry
	Values map[string]float64
}

// Constant is where a stage keeps a value of a model, and the name the model
// has for it.
type Constant struct {
	Name string
	To   *float64
}

// Read puts a model's values where they belong. The error names every one that
// the model lacks, or says that the library has no model of that name.
func (m *Model) Read(name string, into []Constant) error {
	if m == nil {
		return fmt.Errorf("the library entry `model %s` is missing", name)
	}
	var missing []string
	for _, c := range into {
		v, ok := m.Values[c.Name]
		if !ok {
			missing = append(missing, c.Name)
			continue
		}
		*c.To = v
	}
	if len(missing) > 0 {
		return fmt.Errorf("model %s lacks %s", m.Name, strings.Join(missing, ", "))
	}
	return nil
}

// Names lists the names of constants, in their order.
func Names(of []Constant) []string {
	names := make([]string, 0, len(of))
	for _, c := range of {
		names = append(names, c.Name)
	}
	return names
}
