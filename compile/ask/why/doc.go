// Package why tells how a predicted number came about: the formula with the
// numbers put in, what is written in the text and where, the source of the
// model and the range in which it holds, and which inputs move the number most.
//
// Every number that can be asked for is one row of a table (table.go; the rows
// of each stage stand in a file of their own): its names, how it is read from a
// plan, the working, the numbers that it came from, the lines of text that bear
// on it, and the model (models.go). Since the numbers it came from are rows
// themselves, an answer is a tree, as deep as asked.
//
// # The working
//
// A line of working is a chain of terms, worked from left to right as on a
// calculator without brackets, or a figure read from a table. Its numbers are
// in the reader's units and are shown to as many places as it takes for the
// line to come out as shown (line.go): whoever keys in what is printed gets
// what is printed.
//
// # What moves it
//
// Each input is nudged alone, all else as written, and the batch computed anew:
// a point of a share, 2 F (or 1 C), a tenth of a time, of a volume or of a
// model's constant (knobs.go). What counts is the difference in the number asked
// for. It is a slope at this batch, and not a law: two nudges together need not
// add up, and a large change need not be a small one many times over.
//
// The package knows recipes and plans. How a batch is computed is handed to it
// as a function, and how an answer is shown is render's business.
package why
