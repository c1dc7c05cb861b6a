# `make demo` and `make test` do all their own set-up. See DEVELOPERS.md.

GO ?= go
DEMO = examples/harbour-candles

.PHONY: demo test build browser golden faults fuzz go

# The booklet, HTML and balance of the first example, in out/.
demo: build browser
	out/bin/tallyfold check $(DEMO)
	out/bin/tallyfold balance $(DEMO) > out/harbour-candles-balance.txt
	out/bin/tallyfold booklet $(DEMO) --out out
	@echo "Look into out/: the booklet as PDF and HTML, and the balance."

test: go browser
	$(GO) vet ./...
	$(GO) test ./...

build: go
	@mkdir -p out/bin
	$(GO) build -o out/bin/tallyfold ./cmd/tallyfold

# A browser to make PDFs with: installed on Debian, elsewhere it is said what to install.
browser: go
	@GO="$(GO)" bash .ci/setup

# Write the golden files again. Read the difference before you commit it.
golden: browser
	UPDATE_GOLDEN=1 $(GO) test ./...

# What is found of single faults made in the examples, by kind, as a table.
faults: go
	@cd kit/proof/faults && SHOW_FAULTS=1 $(GO) test -count=1

# Each fuzz target for a short while.
FUZZTIME ?= 20s
fuzz: go
	@bash .ci/fuzz $(FUZZTIME)

go:
	@command -v $(GO) >/dev/null 2>&1 || { echo "Go is missing: install version 1.26 or newer and try again."; exit 1; }
