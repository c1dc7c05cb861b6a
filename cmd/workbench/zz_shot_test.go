package workbench

import (
	"testing"
	"time"
)

func TestShots(t *testing.T) {
	b := newBench(t, "harbour-candles", "drawer-sachets", "harbour-yarns", "pocket-notebooks")
	w := b.open("/")
	for _, size := range []struct {
		n    string
		w, h int
	}{{"wide", 1400, 900}, {"narrow", 390, 844}} {
		w.size(size.w, size.h)
		for _, p := range []struct{ n, at string }{{"shelf", "/"}, {"box", "/kit/harbour-candles/box"}, {"method", "/kit/harbour-candles/method"}, {"sums", "/kit/harbour-candles/sums"}, {"cautions", "/kit/harbour-candles/cautions"}, {"booklet", "/kit/harbour-candles/booklet"}, {"words", "/kit/harbour-candles/words"}, {"earlier", "/kit/harbour-candles/earlier"}, {"start", "/start"}} {
			w.goTo("http://" + b.host + p.at)
			time.Sleep(400 * time.Millisecond)
			w.look(p.n + "-" + size.n)
			w.fine()
		}
	}
}
