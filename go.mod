module holt.example

go 1.26.4

require (
	github.com/deadsy/sdfx v0.0.0-20250127165859-030b425ef91c
	github.com/stretchr/testify v1.12.1
	github.com/tdewolff/canvas v0.0.0-20260820161200-72985dc66d4e
	golang.org/x/image v0.48.0
	pgregory.net/rapid v1.3.0
)
