# The commands of DEVELOPERS.md in one place. `make test` needs Go and nothing else.
GO ?= go
STATICCHECK = honnef.co/go/tools/cmd/staticcheck@v0.7.0

.PHONY: all test check bench fuzz mutants readers pictures

all: check

test:
	$(GO) test ./...

check:
	@test -z "$$(gofmt -l . | tee /dev/stderr)" || (echo "run gofmt -w on the files above"; exit 1)
	$(GO) vet ./...
	$(GO) run $(STATICCHECK) ./...
	$(GO) test -race -short ./...

bench:
	$(GO) test -run '^$$' -bench . -benchmem ./...

# Each fuzz target for FUZZTIME.
FUZZTIME ?= 20s
fuzz:
	@for p in $$($(GO) list ./...); do \
		for f in $$($(GO) test -list '^Fuzz' $$p | grep '^Fuzz'); do \
			echo "$$p $$f"; $(GO) test -run '^$$' -fuzz "^$$f$$" -fuzztime $(FUZZTIME) $$p || exit 1; \
		done; \
	done

# Seeded faults, each of which must turn a test red.
mutants:
	$(GO) run .ci/mutants/main.go .ci/mutants/faults.go

# The outside readers that the strict tests need (Debian, Node.js).
readers:
	bash .ci/install

# The pictures of the README.
pictures:
	$(GO) run ./examples/orchard -out out/orchard
	$(GO) run ./examples/hexagon -out out/hexagon
