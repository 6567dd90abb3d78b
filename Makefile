# Groundbeat. "make" or "make help" tells what there is; a line's help stands behind ##.

# The port that make play serves on, and how long each fuzz target runs.
PORT ?= 8080
FUZZTIME ?= 30s

# Whoever owns the folder, and whatever git thinks of it: the build needs no history.
export GOFLAGS = -buildvcs=false -mod=readonly
export PORT

TOOLS := $(CURDIR)/.tools
# What browser plays: the site as build makes it, but not compressed, which takes minutes.
SITE := $(TOOLS)/site
FOR_BROWSER := GOOS=js GOARCH=wasm
# The packages that run in the browser only, and have tests that do.
IN_BROWSER := ./audio/speaker ./game ./wasm ./wasm/dom ./wasm/store ./wasm/idb

# The packages in which natively anything runs side by side.
SIDE_BY_SIDE := ./audio ./wasm/serve ./wasm/pack

.DEFAULT_GOAL := help
# Two browsers at once would spoil each other's timing.
.NOTPARALLEL:
.PHONY: help setup build play check test bench budgets fuzz golden pictures clean has-go lint unit race whole in-browser browser natively light measured beside

help: ## list the targets
	@awk -F ':[^#]*## ' '/^[a-z][a-z-]*:.*## / { printf "  make %-12s %s\n", $$1, $$2 }' Makefile

has-go: ## say so if Go is missing or too old
	@command -v go >/dev/null || { echo "Go is missing: install the version that go.mod names, or a newer one (https://go.dev/dl/)." >&2; exit 1; }
	@go list -m >/dev/null || { echo "This Go is too old: install the version that go.mod names, or a newer one (https://go.dev/dl/)." >&2; exit 1; }

setup: has-go ## install what the tests need (Chromium, a C compiler, three tools)
	@.ci/setup

build: has-go ## write the site to dist/, compressed
	go run ./wasm/pack -compress

play: has-go ## build in a hurry and serve at http://localhost:8080/ (PORT=… for another port)
	@go run ./wasm/pack
	@mkdir -p $(TOOLS) && go build -o $(TOOLS)/serve ./wasm/serve && exec $(TOOLS)/serve

check: setup lint unit race ## lint and unit tests, for each commit: under a minute

lint: setup ## gofmt, go vet and staticcheck, for this machine and for the browser; nothing that no command reaches
	@unformatted=$$(gofmt -l assets audio game scoring wasm); [ -z "$$unformatted" ] || { echo "not as gofmt writes it:" $$unformatted >&2; exit 1; }
	go vet ./...
	go vet -tags browser ./wasm
	$(FOR_BROWSER) go vet ./...
	$(TOOLS)/staticcheck -tags browser ./...
	$(FOR_BROWSER) $(TOOLS)/staticcheck ./...
	.ci/dead

unit: has-go ## the tests that need no browser, with fewer repetitions
	go test -short -shuffle=on ./...

race: has-go ## the tests of what runs side by side natively, with the race detector
	go test -race -short -shuffle=on -timeout 30m $(SIDE_BY_SIDE)

# They make much that is soon let go of: with room, the collector works seldom.
whole: has-go ## the tests that need no browser, with all their repetitions
	GOGC=400 go test -shuffle=on -timeout 30m ./...

# What measures times has the machine to itself. What plays beside other tests takes time
# rather than work, and all that works meanwhile gives way to it.
test: setup lint measured ## everything: lint, all repetitions, and all that runs in a real browser
	@nice -n 19 $(MAKE) natively & \
	$(MAKE) -o $(SITE) beside; played=$$?; wait $$! && exit $$played

natively: whole race in-browser light ## all of test that plays no rounds

in-browser: setup ## the tests of the packages that run in the browser only, in it
	$(FOR_BROWSER) go test -count=1 -timeout 15m -exec $(TOOLS)/in-browser $(IN_BROWSER)

$(SITE): setup
	go run ./wasm/pack -out $(SITE)

browser: measured beside ## play the site in a real browser: what measures times, one test after the other, then the rest

measured: $(SITE) ## the tests in a real browser that measure times, one by one
	go test -tags browser -count=1 -parallel 1 -timeout 60m -skip "^($$(.ci/beside)|TestPageIsLight)$$" ./wasm -site $(SITE)

beside: $(SITE) ## the other tests in a real browser, three at a time
	go test -tags browser -count=1 -parallel 3 -timeout 60m -run "^($$(.ci/beside))$$" ./wasm -site $(SITE)

light: setup build ## the site as it is put on the web, compressed: its weight, and that it starts
	go test -tags browser -count=1 -run '^TestPageIsLight$$' ./wasm

bench: setup ## benchmarks, with allocations; the drums and the store in the browser too; then make budgets
	go test -run '^$$' -bench . -benchmem ./...
	$(FOR_BROWSER) go test -run '^$$' -bench Stream -benchmem -exec $(TOOLS)/in-browser ./audio
	$(FOR_BROWSER) go test -run '^$$' -bench . -benchtime 3x -exec $(TOOLS)/in-browser ./wasm/store
	@$(MAKE) budgets

budgets: setup build ## measure what the page may cost and write it into testdata/budgets.md (15 minutes)
	go test -count=1 -run '^TestReadDoesNotAllocate$$' ./audio
	$(FOR_BROWSER) go test -count=1 -run '^TestIdleFrameAllocatesNothing$$' -exec $(TOOLS)/in-browser ./game
	go test -tags browser -count=1 -timeout 30m -run '^TestBudgets$$' ./wasm -budgets

fuzz: has-go ## run each fuzz target for FUZZTIME (30s)
	@for package in $$(go list ./...); do \
		for target in $$(go test -list '^Fuzz' $$package | grep '^Fuzz'); do \
			echo "$$package $$target"; \
			go test -run '^$$' -fuzz "^$$target$$" -fuzztime $(FUZZTIME) $$package || exit 1; \
		done; \
	done

golden: has-go ## write the golden files anew; read the difference as code
	@packages=$$(grep -rlE --include='*_test.go' 'flag\.Bool\("update"|proof\.(Golden|Screens)\(' . | xargs -r -n 1 dirname | sort -u); \
	[ -z "$$packages" ] || go test $$packages -update

pictures: setup build ## take the README's pictures anew, in a real browser
	go test -tags browser -count=1 -parallel 1 -run '^(TestLayout|TestClassIsLegible)' ./wasm -pictures

clean: ## remove what was built and installed here
	rm -rf dist .tools testdata/out
