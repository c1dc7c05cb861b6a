package print

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
	"tallyfold/render"
	"tallyfold/templates"
)

// The limits that are asked of us, as multiples of what the browser itself takes: times differ from machine to machine,
// ratios hardly.
const (
	mostOfPrint   = 1.25    // a PDF, of the browser's loading and printing the same page
	mostOfStarts  = 1.0 / 7 // fifty PDFs, of fifty starts of the browser
	mostOfHTML    = 30 * time.Millisecond
	startsMeasure = 10 // separate starts that are timed, to be told for fifty
)

// TestRatios measures when it is asked to ("make measure") and prints what it finds; it fails beyond a limit.
func TestRatios(t *testing.T) {
	if os.Getenv("MEASURE") == "" {
		t.Log("measures nothing unless asked: make measure")
		return
	}
	booklet := exampleBooklet(t)
	html := medianOf(15, func() { markup(t, booklet) })
	page := markup(t, booklet)
	width, height := booklet.Form.Area()
	options := Options{Paper: Paper(booklet.Form.Paper), Title: booklet.Title, Language: booklet.Language, Outline: true, Area: Area{width, height}}
	whole, own := pairedTimes(t, page, options)
	one := fifty(t, booklet, options)
	pdf, err := browser(t).Lay(context.Background(), page, options)
	if err != nil {
		t.Fatal(err)
	}
	fmt.Printf("a booklet of %d pages\n", pdf.Pages)
	fmt.Printf("  HTML                                     %6.1f ms          (limit %v)\n", 1000*html.Seconds(), mostOfHTML)
	fmt.Printf("  PDF, warm browser                        %6.0f ms\n", 1000*whole.Seconds())
	fmt.Printf("  the browser's own load and print         %6.0f ms   × %.2f (limit %.2f)\n", 1000*own.Seconds(), whole.Seconds()/own.Seconds(), mostOfPrint)
	fmt.Printf("fifty of them\n")
	fmt.Printf("  in one command                           %6.1f s\n", one.Seconds())
	beyond := html > mostOfHTML || whole.Seconds() > mostOfPrint*own.Seconds()
	for _, start := range separateWays {
		program, err := exec.LookPath(start.program)
		if err != nil {
			fmt.Printf("  fifty starts of %-24s  not measured: it is not on this machine\n", start.name)
			continue
		}
		separate := separateStarts(t, program, page)
		fmt.Printf("  fifty starts of %-24s %6.1f s    × 1/%.1f%s (%d starts timed, times %d)\n",
			start.name, separate.Seconds(), separate.Seconds()/one.Seconds(), start.limit, startsMeasure, 50/startsMeasure)
		beyond = beyond || start.limit != "" && one.Seconds() > mostOfStarts*separate.Seconds()
	}
	if beyond {
		t.Error("beyond a limit")
	}
}

func exampleBooklet(t *testing.T) *render.Booklet {
	t.Helper()
	k, diagnoses := instructions.Open(os.DirFS("../../examples/drawer-sachets"), "drawer-sachets")
	if k == nil || len(diagnoses) > 0 {
		t.Fatal(diagnoses)
	}
	booklet, err := render.Assemble(k, ledger.Follow(k), templates.Shipped(), render.Options{Form: render.HalfLetter})
	if err != nil {
		t.Fatal(err)
	}
	return booklet
}

func markup(t *testing.T, booklet *render.Booklet) []byte {
	t.Helper()
	page, err := booklet.HTML()
	if err != nil {
		t.Fatal(err)
	}
	return page
}

func medianOf(times int, work func()) time.Duration {
	var all []time.Duration
	for range times {
		begin := time.Now()
		work()
		all = append(all, time.Since(begin))
	}
	slices.Sort(all)
	return all[len(all)/2]
}

// pairedTimes times our PDF and the browser's own way in turn, as a machine is not equally busy all the time.
func pairedTimes(t *testing.T, page []byte, options Options) (whole, own time.Duration) {
	t.Helper()
	b := browser(t)
	plain := func(ctx context.Context, tab *tab) error {
		if err := tab.load(ctx, page); err != nil {
			return err
		}
		// The faces must be there, or the feet of the pages are printed in others: other pages.
		if _, err := tab.layOut(ctx, Options{}); err != nil {
			return err
		}
		_, err := tab.print(ctx, options)
		return err
	}
	var ours, theirs []time.Duration
	for range 15 {
		ours = append(ours, medianOf(1, func() {
			if _, err := b.Lay(context.Background(), page, options); err != nil {
				t.Fatal(err)
			}
		}))
		theirs = append(theirs, medianOf(1, func() {
			if err := b.do(context.Background(), plain); err != nil {
				t.Fatal(err)
			}
		}))
	}
	slices.Sort(ours)
	slices.Sort(theirs)
	return ours[len(ours)/2], theirs[len(theirs)/2]
}

// fifty makes fifty booklets as one command does, from the browser's start to its end.
func fifty(t *testing.T, booklet *render.Booklet, options Options) time.Duration {
	t.Helper()
	begin := time.Now()
	b, err := Open(context.Background(), Settings{Warn: func(string) {}})
	needsBrowser(t, err)
	var all sync.WaitGroup
	places := make(chan struct{}, pagesAtOnce)
	for range 50 {
		all.Add(1)
		go func() {
			defer all.Done()
			places <- struct{}{}
			defer func() { <-places }()
			if _, err := b.Lay(context.Background(), markup(t, booklet), options); err != nil {
				t.Error(err)
			}
		}()
	}
	all.Wait()
	b.Close()
	return time.Since(begin)
}

// separateWays are the ways in which people print without us: the whole browser, which the limit is for, and its
// shell without a window, which is told beside it.
var separateWays = []struct{ name, program, limit string }{
	{"the whole browser", "/usr/lib/chromium/chromium", " (limit 1/7)"},
	{"the shell without window", "/usr/lib/chromium/chromium-headless-shell", ""},
}

// separateStarts is how long it takes to start a browser anew for each of fifty pages.
func separateStarts(t *testing.T, program string, page []byte) time.Duration {
	t.Helper()
	folder := t.TempDir()
	file := filepath.Join(folder, "page.html")
	if err := os.WriteFile(file, page, 0o644); err != nil {
		t.Fatal(err)
	}
	begin := time.Now()
	for range startsMeasure {
		command := exec.Command(program, "--headless", "--disable-gpu", "--no-sandbox", "--generate-pdf-document-outline",
			"--user-data-dir="+filepath.Join(folder, "profile"), "--print-to-pdf="+filepath.Join(folder, "page.pdf"), "file://"+file)
		if said, err := command.CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, said)
		}
	}
	return time.Since(begin) * (50 / startsMeasure)
}
