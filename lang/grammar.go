package lang

// Grammar is the grammar of the language in EBNF, for the reference. Tokens are
// spelt as TokenKind names them; spaces and comments may stand between any two.
const Grammar = `File = Line* .
Line = Statement? Newline .
Statement = Item+ Block? .
Block = Open ((Statement? Close) | (Newline Line* Close)) .
Item = Word | String | Quantity | Date | Clock | Slash | (Comma Newline*) .
Quantity = Number (Range Number)? Unit? .
`
