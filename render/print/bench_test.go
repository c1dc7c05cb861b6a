package print

import (
	"bytes"
	"context"
	"encoding/base64"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"math/rand/v2"
	"strings"
	"testing"
	"time"
)

// booklet is a page like a real one: 12 A5 pages, a font inside, and two photographs of 1.7 MB each.
func booklet(t testing.TB) []byte {
	t.Helper()
	var page strings.Builder
	page.WriteString(`<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Measured</title><style>` + fontFace +
		`@page{margin:12mm;@bottom-center{content:counter(page)}} section{break-before:page} img{width:80mm}` +
		`</style></head><body><nav>`)
	for i := range 11 {
		fmt.Fprintf(&page, `<a href="#s%d">Part %d</a> `, i, i)
	}
	page.WriteString("</nav>")
	for i := range 11 {
		fmt.Fprintf(&page, `<section><h2 id="s%d">Part %d</h2>`, i, i)
		if i%5 == 1 {
			fmt.Fprintf(&page, `<img alt="A photograph" src="data:image/jpeg;base64,%s">`, photograph(t, uint64(i)))
		}
		for range 3 {
			page.WriteString("<p>" + strings.Repeat("Warm the wax slowly and stir it now and then. ", 8) + "</p>")
		}
		page.WriteString("<table><tr><th>Amount<th>What</tr><tr><td>12 g<td>Wax</tr></table></section>")
	}
	return []byte(page.String())
}

// photograph makes a picture that compresses as badly as a real one, in base64.
func photograph(t testing.TB, seed uint64) string {
	t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, 1600, 1200))
	random := rand.New(rand.NewPCG(seed, 1))
	for y := range 1200 {
		for x := range 1600 {
			c := uint8(x/16 + random.IntN(60))
			picture.Set(x, y, color.RGBA{c, uint8(y / 8), c / 2, 255})
		}
	}
	var data bytes.Buffer
	if err := jpeg.Encode(&data, picture, &jpeg.Options{Quality: 92}); err != nil {
		t.Fatal(err)
	}
	return base64.StdEncoding.EncodeToString(data.Bytes())
}

// BenchmarkPDF measures a booklet on a browser that has already printed one, and says how it compares with the
// browser's own print call alone.
func BenchmarkPDF(b *testing.B) {
	page := booklet(b)
	var inCall time.Duration
	options := Options{Paper: A5, Outline: true}
	measure := func(ctx context.Context, t *tab) error {
		if err := t.load(ctx, page); err != nil {
			return err
		}
		if _, err := t.layOut(ctx, options); err != nil {
			return err
		}
		begin := time.Now()
		_, err := t.print(ctx, options)
		inCall += time.Since(begin)
		return err
	}
	if _, err := browser(b).PDF(context.Background(), page, options); err != nil {
		b.Fatal(err)
	}
	var whole time.Duration
	for b.Loop() {
		begin := time.Now()
		if _, err := browser(b).PDF(context.Background(), page, options); err != nil {
			b.Fatal(err)
		}
		whole += time.Since(begin)
		if err := browser(b).do(context.Background(), measure); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(len(page))/(1<<20), "MB-html")
	b.ReportMetric(whole.Seconds()*1000/float64(b.N), "ms/pdf")
	b.ReportMetric(whole.Seconds()/inCall.Seconds(), "×print-call")
}
