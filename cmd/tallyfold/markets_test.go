package main

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"tallyfold/kit/handbook"
	"tallyfold/kit/market"
	"tallyfold/render"
	"tallyfold/render/labels"
	"tallyfold/templates"
)

// marketKits are a bath kit, a candle kit and a child's kit, each sold in all three markets.
var marketKits = []string{"bath", "candle", "child"}

// judgedOn is the day that the kits are judged as of.
var judgedOn = time.Date(2026, time.November, 26, 12, 0, 0, 0, time.UTC)

// What every market asks of each kit, as it is printed.
func TestThreeKitsThroughThreeMarkets(t *testing.T) {
	for _, name := range marketKits {
		var out bytes.Buffer
		o := marketOptions{streams: streams{out: &out, err: &out}, asOf: judgedOn.Format(time.DateOnly)}
		if err := o.run("testdata/markets/" + name); err != nil {
			t.Fatal(err)
		}
		compareHazards(t, "testdata/markets/"+name+".txt", out.String())
		if text := strings.ToLower(out.String()); strings.Contains(text, "compliant") || strings.Contains(text, " safe ") {
			t.Errorf("%s: it says compliant or safe", name)
		}
	}
}

// plainText is what a page says, its lines as one.
func plainText(page string) string {
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		return ""
	}
	var words []string
	for node := range root.Descendants() {
		if node.Type == html.TextNode {
			words = append(words, strings.Fields(node.Data)...)
		}
	}
	return strings.Join(words, " ")
}

// Every statement stands where its market asks for it, to the letter: in the booklet of every
// size, and on a label of the kind that is asked.
func TestStatementsStandWhereTheyAreAsked(t *testing.T) {
	for _, name := range marketKits {
		p, err := prove(filepath.Join("testdata", "markets", name), judgedOn)
		if err != nil || p.Kit == nil || p.Findings.MustFix() {
			t.Fatalf("%s: %v, %v", name, err, p.Findings)
		}
		asked := inBooklet(t, p)
		for _, form := range render.Forms() {
			booklet, err := render.Assemble(p.Kit, p.Ledger, templates.Shipped(), render.Options{Form: form})
			if err != nil {
				t.Fatal(err)
			}
			text := strings.ReplaceAll(string(booklet.Markdown), `\`, "")
			for _, words := range asked {
				if !strings.Contains(text, words) {
					t.Errorf("%s, %s: the booklet does not say %q", name, form.Name, words)
				}
			}
		}
		booklet, err := render.Assemble(p.Kit, p.Ledger, templates.Shipped(), render.Options{})
		if err != nil {
			t.Fatal(err)
		}
		page, err := booklet.HTML()
		if err != nil {
			t.Fatal(err)
		}
		for _, words := range asked {
			if !strings.Contains(plainText(string(page)), words) {
				t.Errorf("%s: the page does not say %q", name, words)
			}
		}
		set, err := labels.Make(p.Kit, p.Ledger, templates.Shipped(), labels.Options{})
		if err != nil || len(set.Misfits) > 0 {
			t.Fatalf("%s: %v, no room for %v", name, err, set.Misfits)
		}
		for _, d := range set.Documents {
			page, err := d.HTML()
			if err != nil {
				t.Fatal(err)
			}
			place := map[string]handbook.Place{"bags": handbook.OnBag, "containers": handbook.OnContainer, "box": handbook.OnBox}[d.Kind]
			for _, s := range market.Statements(p.Kit, p.Ledger, place) {
				if want := wordsOf(t, s); !s.Hazards && !strings.Contains(plainText(string(page)), want) {
					t.Errorf("%s: the labels of the kind %s do not say %q", name, d.Kind, want)
				}
			}
		}
	}
}

// inBooklet are the words that a booklet has to bear; that there are none is a fault here.
func inBooklet(t *testing.T, p *proved) []string {
	t.Helper()
	var all []string
	for _, s := range market.Statements(p.Kit, p.Ledger, handbook.InBooklet) {
		if !s.Hazards {
			all = append(all, wordsOf(t, s))
		}
	}
	if len(all) == 0 {
		t.Errorf("%s: no statement is asked in the booklet", p.name)
	}
	return all
}

func wordsOf(t *testing.T, s market.Statement) string {
	t.Helper()
	if s.Word == "" {
		return s.Text
	}
	words, err := templates.Shipped().Words(templates.SourceLanguage)
	if err != nil {
		t.Fatal(err)
	}
	return words.Say(s.Word)
}
