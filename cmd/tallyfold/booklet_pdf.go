package main

import (
	"context"
	"fmt"
	"slices"

	"tallyfold/render"
	"tallyfold/render/press"
	"tallyfold/render/print"
)

// A job is one PDF to make, with what may be made of it.
type job struct {
	booklet *render.Booklet
	base    string // its path without ".pdf"
	printed print.Printed
	sheets  sheets
	err     error
}

// printersAtOnce is how many PDFs are made side by side: a browser prints two at a time.
const printersAtOnce = 2

// writePDFs makes all PDFs in one browser and writes them in the order they were asked
// for. What has no room is told and not written; the others are made all the same.
func (o *bookletOptions) writePDFs(ctx context.Context, jobs []job) error {
	browser, err := print.Open(ctx, print.Settings{Program: o.browser, Warn: o.warn})
	if err != nil {
		return fmt.Errorf("Markdown and HTML are made, the PDF is not: %w", err)
	}
	defer browser.Close()
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	done := make([]chan struct{}, len(jobs))
	places := make(chan struct{}, printersAtOnce)
	for i := range jobs {
		done[i] = make(chan struct{})
		go func() {
			defer close(done[i])
			places <- struct{}{}
			defer func() { <-places }()
			jobs[i].err = o.make(ctx, browser, &jobs[i])
		}()
	}
	full := true
	for i := range jobs {
		<-done[i]
		fits, err := o.finish(jobs[i])
		if err != nil {
			return err
		}
		full = full && fits
	}
	if o.fit {
		if err := o.writeFit(jobs); err != nil {
			return err
		}
	}
	// Who asks for all sizes gets those that there are.
	if !full && !slices.Contains(o.papers, "all") {
		return errMustFix
	}
	return nil
}

// make prints one booklet and lays it on sheets if it is to be folded.
func (o *bookletOptions) make(ctx context.Context, browser *print.Browser, j *job) error {
	var err error
	j.printed, err = press.Booklet(ctx, browser, j.booklet)
	if err != nil || len(j.printed.Fit.Overflows) > 0 {
		return err
	}
	j.sheets, err = o.folding.fold(ctx, browser, j.booklet, j.printed)
	return err
}

// finish writes what became of a job, and says whether everything had room.
func (o *bookletOptions) finish(j job) (bool, error) {
	if j.err != nil {
		return false, fmt.Errorf("%s.pdf is not made: %w", j.base, j.err)
	}
	if len(j.printed.Fit.Overflows) > 0 {
		o.tellOverflows(j)
		return false, nil
	}
	for _, file := range j.files() {
		if err := o.write(file.path, file.data); err != nil {
			return false, err
		}
	}
	return true, nil
}

// A pdfFile is one file that a job writes.
type pdfFile struct {
	path string
	data []byte
}

// files are the PDFs of a job: of a leaflet the folded sheet alone.
func (j job) files() []pdfFile {
	var files []pdfFile
	if j.booklet.Form.Way == render.Leaf {
		files = append(files, pdfFile{j.base + ".pdf", j.sheets.folded})
	} else {
		files = append(files, pdfFile{j.base + ".pdf", j.printed.PDF})
		if j.sheets.folded != nil {
			files = append(files, pdfFile{j.base + "-to-fold.pdf", j.sheets.folded})
		}
	}
	if j.sheets.trial != nil {
		files = append(files, pdfFile{j.base + "-fold-trial.pdf", j.sheets.trial})
	}
	return files
}
