package print

import (
	"encoding/base64"

	"golang.org/x/image/font/gofont/gomedium"
)

// fontFace gives a font inside the page the name Probe.
var fontFace = `@font-face{font-family:Probe;src:url(data:font/ttf;base64,` +
	base64.StdEncoding.EncodeToString(gomedium.TTF) + `)}`
