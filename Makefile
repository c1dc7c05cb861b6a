# `make demo` and `make test` do all their own set-up. See DEVELOPERS.md.

GO ?= go
KITS = $(notdir $(patsubst %/kit.yaml,%,$(wildcard examples/*/kit.yaml)))

.PHONY: demo test build browser editor golden faults fuzz measure go

# What is made of every example: check, balance, and the booklet in all sizes and
# languages, on sheets to fold, and in black, and its labels. In out/.
demo: build browser
	out/bin/tallyfold check examples/*/
	@for kit in $(KITS); do out/bin/tallyfold balance examples/$$kit > out/$$kit-balance.txt || exit; done
	out/bin/tallyfold booklet $(KITS:%=examples/%) --paper all --fit --out out/booklets
	out/bin/tallyfold booklet $(KITS:%=examples/%) --paper a5,half-letter,a3-in-four --fold home --out out/folded
	out/bin/tallyfold booklet $(KITS:%=examples/%) --paper a5 --black --fold shop --out out/black
	out/bin/tallyfold booklet examples/drawer-sachets --language all --paper a5,half-letter --out out/languages
	@for kit in $(KITS); do out/bin/tallyfold labels examples/$$kit --out out/labels || exit; done
	@for paper in a4 letter; do out/bin/tallyfold labels examples/harbour-candles --calibrate --paper $$paper --out out/labels || exit; done
	@echo "Look into out/: the booklets and labels as PDF and HTML, and the balances."

test: go browser
	$(GO) vet ./...
	$(GO) test ./...

build: go
	@mkdir -p out/bin
	$(GO) build -o out/bin/tallyfold ./cmd/tallyfold

# A browser to make PDFs with: installed on Debian, elsewhere it is said what to install.
browser: go
	@GO="$(GO)" bash .ci/setup

# The editor component of the workbench, bundled into one file. Needs Node; the versions and
# their hashes are in package-lock.json, so that the file is the same each time.
editor:
	@command -v npm >/dev/null 2>&1 || { echo "Node with npm is missing: install it and try again."; exit 1; }
	cd cmd/workbench/page/editor && npm ci --ignore-scripts && npm run build && rm -rf node_modules

# Write the golden files again. Read the difference before you commit it.
golden: browser
	UPDATE_GOLDEN=1 $(GO) test ./...

# What is found of single faults made in the examples, by kind, as a table.
faults: go
	@cd kit/proof/faults && SHOW_FAULTS=1 $(GO) test -count=1

# What the print takes, as multiples of what the browser itself takes.
measure: browser
	MEASURE=1 $(GO) test -count=1 -run Ratios -v ./render/print

# Each fuzz target for a short while.
FUZZTIME ?= 20s
fuzz: go
	@bash .ci/fuzz $(FUZZTIME)

go:
	@command -v $(GO) >/dev/null 2>&1 || { echo "Go is missing: install version 1.26 or newer and try again."; exit 1; }
