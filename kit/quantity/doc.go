// Package quantity has exact amounts: numbers, units, dimensions and tolerances; how
// they are read from what a maker wrote, reckoned with, and told again.
//
// A Number is a fraction, never a float, so that what was written is kept to the last
// digit. An Amount is a Number with its dimension, its two ends and the words that
// came with it: the unit, the bound ("at most"), the noun of a count, the base of a
// share. All numbers of an Amount are in the base unit of its Dimension (g, mL, mm,
// mm², °C, s), so that amounts of one dimension add up without a thought for units.
// Two dimensions never mix: Convert refuses, and nothing changes silently.
//
// A Reader knows how one kit writes: its language, its decimal sign, whose spoons and
// cups it means, its own measures. Amount reads a text that is an amount and nothing
// else, and says in plain words what is wrong with one that is not. Find picks the
// amounts out of running prose and leaves doubtful ones alone.
//
// How a text becomes an amount: token.go, numeral.go and slip.go cut it into tokens;
// lexicon.go finds the phrases of a language (language_*.go) among them; parse_*.go
// read figure, unit, range, tolerance and base from left to right; hint.go and
// refuse.go explain what cannot be read. find.go asks the same parser at every place
// in prose where an amount may begin.
//
// Telling comes in two kinds. Amount.String and Amount.In tell what was written, to
// the last digit, so that it can be read again. Show tells what was reckoned: in a
// sensible unit, with no more digits than anyone can use. Household, Dual, DualNet and
// the Label functions follow the rounding rules named beside them.
//
// To add a unit, add a row to unit_rows.go and, if the units program knows it, a line
// to units_oracle_test.go; go generate asks that program again. To add a language,
// write its file and put it into languages.
package quantity
