package main

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"tallyfold/kit/proof"
)

// A proved kit is a proof with the folder as the person wrote it.
type proved struct {
	*proof.Proof
	folder string
	name   string // the folder's own name
}

// prove reads a kit folder and judges it as of a day. Every command starts here.
func prove(folder string, today time.Time) (*proved, error) {
	info, err := os.Stat(folder)
	if err != nil {
		return nil, fmt.Errorf("there is no kit folder %q; make one with: tallyfold new %s", folder, folder)
	}
	if !info.IsDir() {
		return nil, fmt.Errorf("%q is a file; name the kit folder that it lies in", folder)
	}
	absolute, err := filepath.Abs(folder)
	if err != nil {
		return nil, fmt.Errorf("cannot tell where %q lies: %w", folder, err)
	}
	name := filepath.Base(absolute)
	return &proved{proof.Of(os.DirFS(absolute), name, today), filepath.ToSlash(filepath.Clean(folder)), name}, nil
}

// day reads the date that findings are judged as of; empty is today.
func day(text string) (time.Time, error) {
	if text == "" {
		return time.Now(), nil
	}
	at, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return at, fmt.Errorf("--as-of %q is no date; write it as 2026-11-25", text)
	}
	return at, nil
}
