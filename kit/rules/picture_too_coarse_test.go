package rules_test

import (
	"strings"
	"testing"

	"tallyfold/kit/rules"
)

// What cannot be measured is told as not checked, never passed over.
func TestBrokenPicturesCannotBeChecked(t *testing.T) {
	rule, _ := rules.Named("picture-too-coarse")
	for why, data := range map[string]string{
		"cut short":          "\x89PNG\r\n\x1a\n\x00\x00",
		"of a kind unread":   "RIFF\x20\x00\x00\x00WEBPVP8Z",
		"of a size it hides": "GIF89a",
	} {
		s, _ := subject(t, "testdata/picture-too-coarse/clean")
		for _, p := range s.Kit.Pictures {
			p.Data = []byte(data)
		}
		found := rule.Check(s)
		if len(found) != 1 || !strings.HasPrefix(found[0].Found, "cannot check: the picture jar.png") {
			t.Errorf("a picture %s gives %v", why, found)
		}
	}
}

// The picture of the cover has most of the page: 404 dots over its 120 mm are 404 ÷ 120 × 25.4 =
// 85.5 an inch.
func TestPictureOfTheCover(t *testing.T) {
	rule, _ := rules.Named("picture-too-coarse")
	s, _ := subject(t, "testdata/picture-too-coarse/clean") // 404 × 302 dots
	for _, p := range s.Kit.Pictures {
		p.Name = "cover.png"
	}
	found := rule.Check(s)
	if len(found) != 1 || !strings.Contains(found[0].Found, "404 × 302 dots, 86 an inch") {
		t.Errorf("404 dots over 120 mm give %v", found)
	}
}
