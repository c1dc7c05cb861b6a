package diag

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"tallyfold/kit/source"
)

func sample() (List, *source.File) {
	file := source.NewFile("kit.yaml", []byte("name: Lanterns\nwax: {packed: 700 g}\n"))
	packed := file.Span(27, 32)
	return List{
		{Rule: "vague-amount", Severity: ShouldFix, Where: file.Span(0, 4), Found: "b"},
		{
			Rule: "packed-too-little", Severity: MustFix, Where: packed, About: "wax", Cause: "wax",
			Found: "720 g of wax are taken", Expected: "at most 700 g",
			Sum: []string{"360 g + 360 g = 720 g"}, Remedies: Fix("pack at least 720 g", "take 350 g"),
			Also: []Place{{Where: file.Span(6, 14), Note: "step 2"}},
		},
		{Rule: "taken-from-empty", Severity: MustFix, Where: file.Span(15, 18), Found: "the jug runs empty", Cause: "wax", Follows: true},
	}, file
}

func TestTextIsWorstFirstWithPlaceSumAndWayOut(t *testing.T) {
	list, _ := sample()
	var out bytes.Buffer
	if err := WriteText(&out, list, Style{Folder: "lanterns"}); err != nil {
		t.Fatal(err)
	}
	want := `must fix: packed-too-little
  lanterns/kit.yaml:2:13
      2 | wax: {packed: 700 g}
        |             ^^^^^
  found     720 g of wax are taken
  expected  at most 700 g
  sum       360 g + 360 g = 720 g
  to do     pack at least 720 g
  or        take 350 g
  see also  lanterns/kit.yaml:1:7  step 2
  with it   lanterns/kit.yaml:2:1: taken-from-empty, the jug runs empty

should fix: vague-amount
  lanterns/kit.yaml:1:1
      1 | name: Lanterns
        | ^^^^
  found     b
`
	if out.String() != want {
		t.Errorf("got:\n%s\nwant:\n%s", out.String(), want)
	}
}

func TestEveryFieldIsPrinted(t *testing.T) {
	list, _ := sample()
	var out bytes.Buffer
	if err := WriteText(&out, list[1:2], Style{}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"kit.yaml:2:13", "found     720 g", "expected  at most 700 g", "sum       360 g + 360 g",
		"to do     pack at least 720 g", "or        take 350 g", "see also  kit.yaml:1:7  step 2",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is missing in:\n%s", want, out.String())
		}
	}
}

func TestColourOnlyWhenAsked(t *testing.T) {
	list, _ := sample()
	var plain, coloured bytes.Buffer
	_ = WriteText(&plain, list, Style{})
	_ = WriteText(&coloured, list, Style{Colour: true})
	if strings.Contains(plain.String(), "\x1b") || !strings.Contains(coloured.String(), "\x1b[1;31mmust fix") {
		t.Errorf("plain: %q\ncoloured: %q", plain.String(), coloured.String())
	}
}

func TestAMakersTextCannotSteerTheTerminal(t *testing.T) {
	file := source.NewFile("kit.yaml", []byte("name: \x1b]0;owned\x07\n"))
	var out bytes.Buffer
	_ = WriteText(&out, List{{Rule: "r", Severity: MustFix, Where: file.Span(6, 10), Found: "\x1b[2J\u202e"}}, Style{})
	if strings.ContainsAny(out.String(), "\x1b\x07\u202e") {
		t.Errorf("control characters got through: %q", out.String())
	}
}

func TestLongLinesAreCutAroundThePlace(t *testing.T) {
	text := strings.Repeat("a", 5000) + "HERE" + strings.Repeat("b", 5000)
	file := source.NewFile("method.md", []byte(text))
	var out bytes.Buffer
	_ = WriteText(&out, List{{Rule: "r", Severity: MustFix, Where: file.Span(5000, 5004), Found: "x"}}, Style{})
	lines := strings.Split(out.String(), "\n")
	mark := strings.IndexByte(lines[3], '^')
	if runes := []rune(lines[2]); len(runes) > 130 || string(runes[mark:mark+4]) != "HERE" {
		t.Errorf("got:\n%s", out.String())
	}
}

func TestJSONCarriesPlacesInBytes(t *testing.T) {
	list, _ := sample()
	var out bytes.Buffer
	if err := WriteJSON(&out, list); err != nil {
		t.Fatal(err)
	}
	var read []PlainFinding
	if err := json.Unmarshal(out.Bytes(), &read); err != nil {
		t.Fatal(err)
	}
	if len(read) != 3 || read[1].Place.Start != 27 || read[1].Place.End != 32 || read[1].Remedies[0].Do == "" {
		t.Errorf("got %+v", read)
	}
}

func TestSortedTellsEachFindingOnce(t *testing.T) {
	list, _ := sample()
	if got := append(list, list...).Sorted(); len(got) != 3 {
		t.Errorf("%d findings, want 3", len(got))
	}
	if !list.MustFix() || list.Count(MustFix) != 2 || (List{}).MustFix() {
		t.Error("counting is wrong")
	}
}

// Where all does not fit, what must be fixed stays whole and the rest takes a line
// each; where it fits, nothing is shortened.
func TestWhatDoesNotFitIsToldInShort(t *testing.T) {
	list, file := sample()
	list = append(list,
		Finding{Rule: "tool-never-used", Severity: WorthKnowing, Where: file.Span(15, 18), Found: "c\x1b", Expected: "d", Cause: "tools"},
		Finding{Rule: "tool-not-listed", Severity: ShouldFix, Where: file.Whole(), Found: "e", Cause: "tools", Follows: true})
	tell := func(screen int) string {
		var out bytes.Buffer
		if err := WriteText(&out, list, Style{Screen: screen, Rest: "ask for more"}); err != nil {
			t.Fatal(err)
		}
		return out.String()
	}
	full := tell(0)
	lines := strings.Count(full, "\n")
	if tell(lines) != full || strings.Contains(full, "in short") {
		t.Errorf("%d lines fit and are not told in full:\n%s", lines, tell(lines))
	}
	head, rest, _ := strings.Cut(tell(lines-1), "\nshould fix, in short:\n")
	if must, _, _ := strings.Cut(full, "\nworth knowing: "); head != must {
		t.Errorf("what must be fixed is told as:\n%s\nwant:\n%s", head, must)
	}
	want := `  kit.yaml: tool-not-listed, e
  kit.yaml:1:1: vague-amount, b

worth knowing, in short:
  kit.yaml:2:1: tool-never-used, c�

3 lesser findings are told in short; ask for more
`
	if rest != want {
		t.Errorf("the rest is:\n%s\nwant:\n%s", rest, want)
	}
	list = list[3:4]
	if got := tell(1); got != "worth knowing, in short:\n  kit.yaml:2:1: tool-never-used, c�\n\n1 lesser finding is told in short; ask for more\n" {
		t.Errorf("got:\n%s", got)
	}
}

func TestAcceptedFindingsAreToldWithReasonAndEnd(t *testing.T) {
	list, _ := sample()
	var out bytes.Buffer
	if err := WriteAccepted(&out, []Accepted{{Finding: list[1], Because: "a trial\nof two lines", Until: "edition 2"}}, Style{Folder: "lanterns"}); err != nil {
		t.Fatal(err)
	}
	want := `accepted by the maker, and not counted:
  lanterns/kit.yaml:2:13: packed-too-little of wax, 720 g of wax are taken
    because a trial of two lines, until edition 2

`
	if out.String() != want {
		t.Errorf("got:\n%s\nwant:\n%s", out.String(), want)
	}
	out.Reset()
	if err := WriteAccepted(&out, nil, Style{}); err != nil || out.Len() > 0 {
		t.Errorf("nothing accepted prints %q, %v", out.String(), err)
	}
}
