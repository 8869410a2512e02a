# Everything a person does with this repository. `make` alone lists it.
# Needs: Go 1.26, Node 20 or later, make, gcc. Nothing else by hand.

LINT = go tool -modfile=.ci/lint.mod golangci-lint
WEB_SOURCES = $(shell find web/src web/public web/*.html web/*.config.* web/tsconfig.json -type f)

.PHONY: help run build web test check lint bench generate clean
.DEFAULT_GOAL := help

help:
	@echo "make run       build everything and open the demonstration ship"
	@echo "make build     build bin/oakum with the browser pages inside"
	@echo "make web       build the browser pages"
	@echo "make test      every test; the same as CI"
	@echo "make check     the quick part: vet, lint, types, generated files up to date"
	@echo "make bench     benchmarks, beside rivals where those are installed"
	@echo "make generate  rewrite what is generated from the Go types"
	@echo "make clean     remove what was built"

run: build
	bin/oakum demo

build: web
	CGO_ENABLED=0 go build -trimpath -o bin/oakum ./cmd/oakum

web: web/dist/index.html

web/dist/index.html: web/node_modules/.installed $(WEB_SOURCES)
	cd web && npm run --silent build

web/node_modules/.installed: web/package.json web/package-lock.json web/.npmrc
	cd web && npm ci --no-fund --no-audit
	@touch $@

test: build
	.ci/chromium
	node .ci/suites.mjs all

check: web/node_modules/.installed
	node .ci/suites.mjs quick

lint:
	$(LINT) run

bench:
	go test -run "^$$" -bench . -benchtime 1x -timeout 90m ./bench

generate: web/node_modules/.installed
	go test ./api -run TestDescriptionIsCommitted -update
	go generate ./...
	cd web && npm run --silent types

clean:
	rm -rf bin web/node_modules
	find web/dist -mindepth 1 ! -name .gitkeep -delete
