package rules

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/picture"
	"tallyfold/kit/source"
)

var pictureTooCoarse = Rule{
	Name:     "picture-too-coarse",
	Severity: diag.ShouldFix,
	Title:    "A picture has too few dots for its size on the page",
	Explanation: `A photograph that looks sharp on a telephone can print as a blur: paper shows three times as
many dots to the inch as a screen. Below 150 dots an inch the blur is seen at reading
distance (common practice in printing).

Dots are counted as the picture stands upright, and held against the room it is given: in a
step the width of the text and a quarter of the page's height, on the cover most of the
page, in the list of the box 26 × 15 mm. A drawing made of lines (SVG) is sharp at any size and not looked at.

Take the picture anew and closer, or save it with more of its dots. Making the file larger
in a picture program adds dots but nothing to see.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		told := map[string]bool{}
		look := func(p *kit.Picture, where source.Span, place picture.Place) {
			if p == nil || told[p.Name] || picture.IsDrawing(p.Data) {
				return
			}
			told[p.Name] = true
			if finding, ok := coarse(p, where, place); ok {
				findings = append(findings, finding)
			}
		}
		for _, p := range s.Kit.Pictures {
			if name, _, _ := strings.Cut(p.Name, "."); name == "cover" {
				look(p, source.NewFile("pictures/"+p.Name, nil).Whole(), picture.OnCover)
			}
		}
		operations(s.Kit, func(o *kit.Operation, _ *kit.Step) {
			if o.Kind == kit.ShowPicture {
				look(s.Kit.Picture(o.Target), o.Span, picture.InText)
			}
		})
		for _, listed := range picturesInList(s.Kit) {
			look(s.Kit.Picture(listed.Value), listed.Span, picture.InList)
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		for _, p := range s.Kit.Pictures {
			if !picture.IsDrawing(p.Data) {
				return nil
			}
		}
		return []string{"the folder pictures has no picture made of dots"}
	},
}

func coarse(p *kit.Picture, where source.Span, place picture.Place) (diag.Finding, bool) {
	wide, tall, err := picture.Measure(p.Data)
	if err != nil {
		found := "cannot check: the picture " + p.Name + " begins like one, but what follows cannot be read"
		if !errors.Is(err, picture.ErrNone) {
			found = "cannot check: the picture " + p.Name + ": " + err.Error()
		}
		return diag.Finding{
			Where: where, About: p.Name, Found: found, Expected: "a whole JPEG, PNG, GIF or WebP file; this one is left out of the booklet",
			Remedies: diag.Fix("open it in a picture program and save it again as JPEG or PNG", "take the picture anew"),
		}, true
	}
	dots := place.DotsAnInch(wide, tall)
	if dots >= picture.LeastDots {
		return diag.Finding{}, false
	}
	width, height := place.Printed(wide, tall)
	part := picture.LeastDots / dots
	return diag.Finding{
		Where: where, About: p.Name,
		Found:    fmt.Sprintf("the picture %s has %d × %d dots, %.0f an inch at its size on the page, %.0f × %.0f mm", p.Name, wide, tall, dots, width, height),
		Expected: fmt.Sprintf("at least %d dots an inch, and %d if there are that many", picture.LeastDots, picture.PrintedDots),
		Sum:      []string{fmt.Sprintf("%d dots ÷ %.0f mm × 25.4 mm = %.0f an inch", wide, width, dots)},
		Remedies: diag.Fix(
			fmt.Sprintf("take it anew, or save it with at least %.0f × %.0f dots", math.Ceil(float64(wide)*part), math.Ceil(float64(tall)*part)),
			"draw it with lines and save it as SVG, which is sharp at any size"),
	}, true
}
