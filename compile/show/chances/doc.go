// Package chances shows how sure a batch is: the answers of package odds, as text, JSON,
// Markdown and a table for a spreadsheet. It computes nothing.
package chances
