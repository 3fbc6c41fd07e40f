# make           this list
# make serve     build the site and serve it on this machine; needs only Go
# make test      everything that a change must pass; run it before each commit
# make build     build the site into build/out and hold its sizes to the budget
# make edge      build the site and its worker for an edge platform into build/out-edge
# make lint      form, vet and staticcheck: the quick part of make test
# make race      look for races where things happen at once: a part of make test
# make bench     time the calculation, natively, as WebAssembly, in a browser and at the edge
# make pictures  every job on four screens and two sizes of paper, into build/out-screens, to be looked at
# make lighthouse  what a public audit says of the finished site; takes a quarter of an hour
# make endure    the large runs, of which make test has a sample; they take hours
# make mutants   change the calculation in one place after the other: does a test of the package notice? SAMPLE=300 for some
# make fuzz      look for inputs that break it, FUZZTIME (30s) on each target
# make browsers  install what the end-to-end tests need, Debian only
# make clean     remove what was built

FUZZTIME ?= 30s
BENCHTIME ?= 1s

# Go runs a WebAssembly test through go_js_wasm_exec, which it looks for on PATH.
wasm := PATH="$$(go env GOROOT)/lib/wasm:$$PATH" GOOS=js GOARCH=wasm

.PHONY: help serve test build edge lint unit race wasm-unit e2e bench pictures lighthouse endure mutants fuzz browsers clean

help:
	@sed -n 's/^# make/make/p' Makefile

serve:
	go run ./build serve

build:
	go run ./build site

edge:
	go run ./build edge

test: lint unit race wasm-unit e2e build

lint:
	@unformatted="$$(gofmt -l build wasm)"; test -z "$$unformatted" || { echo "gofmt these:"; echo "$$unformatted"; exit 1; }
	go vet ./...
	GOOS=js GOARCH=wasm go vet ./wasm/... ./build/edge/...
	go tool staticcheck ./...
	GOOS=js GOARCH=wasm "$$(go tool -n staticcheck)" ./wasm/cmd/planner ./build/edge/worker
	go mod tidy -diff

unit:
	go test ./...

# The detector of races links with C. TestWhatRunsAtOnceIsTested names what a
# package needs so that it is looked at here.
race: together = $$(grep -rl --include='*_test.go' '^func Test[A-Za-z]*AtOnce(' wasm build | xargs -n1 dirname | sort -u | sed 's|^|./|')
race:
	@command -v cc >/dev/null || { echo "installing a C compiler"; apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -qq -y --no-install-recommends gcc libc6-dev >/dev/null; }
	CGO_ENABLED=1 go test -race -run 'AtOnce$$' $(together)

wasm-unit:
	$(wasm) go test ./wasm/...

e2e: browsers
	cd build/e2e && npm test

browsers:
	build/e2e/setup

bench: timed = $$(grep -rl --include='*_test.go' '^func Benchmark' wasm | xargs -n1 dirname | sort -u | sed 's|^|./|')
bench: browsers
	@echo "native"
	@go test -run '^$$' -bench . -benchmem -benchtime $(BENCHTIME) $(timed)
	@echo "WebAssembly, under node"
	@$(wasm) go test -run '^$$' -bench . -benchmem -benchtime $(BENCHTIME) $(timed)
	@echo "the solver against itself and a dense matrix"
	@cd build/e2e && npm run --silent ratios
	@echo "in a browser"
	@cd build/e2e && npm run --silent bench
	@echo "plan pages, on this machine and at the edge"
	@cd build/e2e && npm run --silent load

pictures: browsers
	@cd build/e2e && npm run --silent pictures

lighthouse:
	build/e2e/lighthouse/setup
	@cd build/e2e/lighthouse && node run.js

# RUN numbers the cases: another number has others.
RUN ?= 1
endure: browsers
	go test ./build/judge -run TestEverythingHolds -v -timeout 0 -run-number $(RUN) -seasons 100000 -wholes 5000 -texts 1000000
	@cd build/e2e && npm run --silent endure-edge -- 100000 $(RUN)
	@cd build/e2e && npm run --silent endure-page -- 10000 $(RUN)

# PACKAGES are folders; without them, those of the list in build/mutants/main.go.
SAMPLE ?= 0
mutants:
	go run ./build/mutants -sample $(SAMPLE) $(PACKAGES)

# Go fuzzes one target of one package at a time.
fuzz:
	@grep -rn --include='*_test.go' -o '^func Fuzz[A-Za-z0-9_]*' wasm build | \
	sed 's|/[^/]*\.go:[0-9]*:func | |' | sort | while read -r folder target; do \
		echo "$$folder $$target"; \
		go test -run '^$$' -fuzz "^$$target\$$" -fuzztime $(FUZZTIME) "./$$folder" || exit 1; \
	done

clean:
	rm -rf build/out build/out-edge build/out-screens build/bin build/e2e/node_modules build/e2e/lighthouse/node_modules
