package print

import (
	"context"
	"fmt"

	"github.com/go-rod/rod/lib/proto"
)

// maxDots bounds the sides of a picture; beyond, browsers leave parts of it empty.
const maxDots = 16_384

// Screenshot shows a page as a screen would and gives the picture as PNG. Width and height are in CSS pixels of 1/96
// inch; a height of zero takes the whole page. Scale is how many dots of the picture make a CSS pixel. The page is
// kept from the outside world as in PDF.
func (b *Browser) Screenshot(ctx context.Context, html []byte, width, height int, scale float64) ([]byte, error) {
	if err := checkSize(html); err != nil {
		return nil, err
	}
	if width <= 0 || height < 0 || !(scale > 0) || tooManyDots(width, scale) || tooManyDots(height, scale) {
		return nil, fmt.Errorf("a picture of %d × %d at scale %v can't be made: each side must have 1 to %d dots",
			width, height, scale, maxDots)
	}
	whole := height == 0
	if whole {
		height = 1
	}
	var picture []byte
	err := b.do(ctx, func(ctx context.Context, t *tab) error {
		page := t.page.Context(ctx)
		t.shownAs = Area{}
		err := proto.EmulationSetDeviceMetricsOverride{Width: width, Height: height, DeviceScaleFactor: scale}.Call(page)
		if err == nil { // a page printed before this one was shown by the rules for print
			err = proto.EmulationSetEmulatedMedia{}.Call(page)
		}
		if err == nil {
			err = t.load(ctx, html)
		}
		if err == nil {
			_, err = t.layOut(ctx, Options{})
		}
		if err == nil {
			picture, err = t.capture(ctx, whole, width, scale)
		}
		if err == nil {
			err = proto.EmulationClearDeviceMetricsOverride{}.Call(page)
		}
		return err
	})
	return picture, err
}

func (t *tab) capture(ctx context.Context, whole bool, width int, scale float64) ([]byte, error) {
	page := t.page.Context(ctx)
	request := proto.PageCaptureScreenshot{Format: proto.PageCaptureScreenshotFormatPng}
	if whole {
		layout, err := proto.PageGetLayoutMetrics{}.Call(page)
		if err != nil {
			return nil, err
		}
		if tooManyDots(int(layout.CSSContentSize.Height), scale) {
			return nil, fmt.Errorf("a picture of the whole page, %.0f high, is %w: it may have %d dots at scale %v",
				layout.CSSContentSize.Height, ErrTooLarge, maxDots, scale)
		}
		request.CaptureBeyondViewport = true
		request.Clip = &proto.PageViewport{
			Width: float64(width), Height: layout.CSSContentSize.Height, Scale: 1,
		}
	}
	shot, err := request.Call(page)
	if err != nil {
		return nil, err
	}
	return shot.Data, nil
}

func tooManyDots(pixels int, scale float64) bool { return float64(pixels)*scale > maxDots }
