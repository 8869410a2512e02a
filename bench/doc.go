// Package bench measures the program beside its rivals. Run `make bench`; docs/benchmarks.md has the figures and says on what machine. Nothing here is a
// test: a slow day must not fail a build.
package bench
