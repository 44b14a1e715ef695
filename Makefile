# The commands of DEVELOPERS.md in one place. `make test` needs Go and nothing else.
GO ?= go
STATICCHECK = honnef.co/go/tools/cmd/staticcheck@v0.7.0

.PHONY: all test check bench fuzz mutants readers pictures

all: check

test:
	$(GO) test -timeout 30m ./...

check:
	@test -z "$$(gofmt -l . | tee /dev/stderr)" || (echo "run gofmt -w on the files above"; exit 1)
	$(GO) vet ./...
	$(GO) run $(STATICCHECK) ./...
	$(GO) test -race -short -timeout 30m ./...

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

# The pictures of the README and the page of elements; .ci/run sees that they are
# up to date.
pictures:
	mkdir -p examples/pictures
	for n in orchard gable hexagon leaning; do \
		$(GO) run ./examples/$$n -out out/$$n >/dev/null; \
		cp out/$$n/assembled.svg examples/pictures/$$n-assembled.svg; \
		cp out/$$n/exploded.svg examples/pictures/$$n-exploded.svg; \
	done
	cp out/leaning/parts.svg examples/pictures/leaning-parts.svg
	rm -f examples/elements/*.svg
	$(GO) run ./examples/elements -out examples/elements
