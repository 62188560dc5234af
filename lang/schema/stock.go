package schema

// stockName is the shape after the word of a stock entry. An entry that begins
// from another takes all its lines and changes some.
const stockName = `NAME ["from" parent:NAME]`

// Stock is the declarations of the stock.
var Stock = []*Field{Grain, Yeast, Enzyme, CaskKind, Standard, Model}
