// Package bench measures the program beside its rivals: general tools and the scripts of rivals/, which do the same work with NumPy, SciPy, scikit-learn and
// VTK. `make bench` runs all and ends with a table; docs/benchmarks.md has the figures and says on what machine. A slow day fails nothing, and a rival that is
// not installed is only named; but where ours and a rival's answers differ by more than they may, the benchmark fails.
package bench
