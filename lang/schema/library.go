package schema

// libraryName is the shape after the word of a library entry. An entry that begins
// from another takes all its lines and changes some.
const libraryName = `NAME ["from" parent:NAME]`

// Library is the declarations of the library.
var Library = []*Field{Grain, Yeast, Enzyme, CaskWood, Standard, Country, Aroma, Model}
