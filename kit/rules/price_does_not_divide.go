package rules

import (
	"slices"
	"strings"
	"unicode"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
)

var priceDoesNotDivide = Rule{
	Name:     "price-does-not-divide",
	Severity: diag.MustFix,
	Title:    "The price of a piece is not that of the kit divided by its pieces",
	Explanation: `“24 EUR, only 3.50 EUR a candle” with six candles in the box is 4 EUR a candle, and a
price that misleads. The price of the kit, “price”, is divided by “makes”, and held
against “price each” and against prices that the claims and the sentence on the cover
tell for one (“4 EUR each”, “£4 a candle”), to half of the smallest coin.

A price in another currency cannot be compared; that should be fixed.

Put the price of a piece right, or leave it out.`,
	Check: func(s Subject) []diag.Finding {
		k := s.Kit
		if !k.Price.Given() || !k.Makes.Given() || k.Makes.Value.Nominal.Sign() <= 0 {
			return nil
		}
		var findings []diag.Finding
		for _, each := range eachPrices(k) {
			if finding, ok := undivided(k, each); ok {
				findings = append(findings, finding)
			}
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		switch {
		case !s.Kit.Price.Given():
			return []string{"no price is told"}
		case len(eachPrices(s.Kit)) == 0:
			return []string{"no price of one piece is told"}
		}
		return nil
	},
}

// eachPrices are all prices told for one piece.
func eachPrices(k *kit.Kit) []kit.Said[quantity.Amount] {
	var all []kit.Said[quantity.Amount]
	if k.PriceEach.Given() {
		all = append(all, k.PriceEach)
	}
	reader := amountReader(k)
	texts := []kit.Said[string]{k.About}
	for _, claim := range k.Claims {
		texts = append(texts, claim.Says)
	}
	for _, said := range texts {
		text := said.Span.Text()
		for _, found := range reader.Find(text) {
			if found.Amount.Dimension == quantity.Money && isForOne(k, text[found.End:]) {
				all = append(all, kit.Said[quantity.Amount]{Value: found.Amount, Span: said.Span.Part(found.Start, found.End)})
			}
		}
	}
	return all
}

// isForOne says whether words behind a price make it that of a piece: "each", "apiece",
// "a candle", "per piece".
func isForOne(k *kit.Kit, text string) bool {
	words := wordsOf(text)
	if len(words) == 0 {
		return false
	}
	if slices.Contains([]string{"each", "apiece"}, words[0]) {
		return true
	}
	if len(words) < 2 || !slices.Contains([]string{"a", "an", "per", "for", "the"}, words[0]) {
		return false
	}
	nouns := append(wordsOf(k.Makes.Value.Noun), "piece")
	for _, piece := range k.Pieces {
		nouns = append(nouns, wordsOf(piece.String())...)
	}
	at := 1
	if words[1] == "each" || words[1] == "one" {
		at = min(2, len(words)-1)
	}
	return slices.ContainsFunc(nouns, func(noun string) bool { return singular(noun) == words[at] })
}

// coin is the smallest coin of a currency, in its unit: a hundredth, or one where
// there are none smaller (ISO 4217 minor units, from memory).
func coin(unit quantity.Unit) quantity.Number {
	if unit.Symbol == "¥" {
		return quantity.Whole(1)
	}
	return quantity.Ratio(1, 100)
}

func undivided(k *kit.Kit, each kit.Said[quantity.Amount]) (diag.Finding, bool) {
	price, n := k.Price.Value, k.Makes.Value.Nominal
	finding := diag.Finding{
		Where: each.Span, About: "price",
		Also: []diag.Place{{Where: k.Price.Span, Note: "the price"}, {Where: k.Makes.Span, Note: "makes " + k.Makes.Value.Written}},
	}
	if each.Value.Unit.Symbol != price.Unit.Symbol {
		finding.Severity = diag.ShouldFix
		finding.Found = "cannot compare the price of a piece, " + onOneLine(each.Span) + ", with that of the kit, " + price.Written
		finding.Expected = "both prices in one currency"
		finding.Remedies = diag.Fix("tell both in one currency")
		return finding, true
	}
	right := price.Nominal.Over(n)
	off := right.Minus(each.Value.Nominal).Abs()
	if off.Cmp(coin(price.Unit).Over(quantity.Whole(2))) <= 0 || each.Value.Bound == quantity.About && off.Cmp(right.Times(aboutAllows)) <= 0 {
		return diag.Finding{}, false
	}
	told := money(right, price)
	finding.Found = "“" + onOneLine(each.Span) + "” for one, and " + price.Written + " for " + n.String() + " is " + told
	finding.Expected = told + " for one"
	finding.Sum = []string{price.Written + " ÷ " + n.String() + " = " + told}
	finding.Remedies = diag.Fix("write "+told+" instead", "put the price of the kit right: "+money(each.Value.Nominal.Times(n), price)+" is "+n.String()+" times as much")
	return finding, true
}

// money tells a sum to the nearest coin, in the way the maker wrote another one.
func money(n quantity.Number, like quantity.Amount) string {
	smallest := coin(like.Unit)
	figure := rounded(n.Plus(smallest.Over(quantity.Whole(2))), smallest, false).String()
	if point := strings.IndexByte(figure, '.'); point >= 0 && len(figure)-point == 2 {
		figure += "0"
	}
	first := strings.IndexFunc(like.Written, unicode.IsDigit)
	last := strings.LastIndexFunc(like.Written, unicode.IsDigit)
	if first < 0 {
		return figure + " " + like.Unit.Symbol
	}
	return like.Written[:first] + figure + like.Written[last+1:]
}
