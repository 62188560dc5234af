package check

// trade holds the recipe against the rules of the trade and the law. Each part
// speaks only if all that it reasons about could be read.
func (b *builder) trade() {}
