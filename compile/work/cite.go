package work

import "newmake/lang/recipe"

// underUS reports whether the plant stands under the law of the United States, which is then the
// one to cite: 27 CFR part 19 and 29 CFR part 1910 bind the plants there, and whisky of a
// type of theirs may be made abroad (27 CFR 5.143(b)).
func underUS(b *recipe.Batch) bool { return b.Plant.Under() == recipe.CountryUS }

// cite names a section of the law of the United States, in brackets, where that
// law is the one to cite.
func cite(b *recipe.Batch, section string) string {
	if section == "" || !underUS(b) {
		return ""
	}
	return " (" + section + ")"
}
