// Package api is the program over HTTP: the same tasks as the command line, typed, described by openapi.yaml, which is generated from the types here and
// committed. Refusals are problem details (RFC 9457) that name the field, the value and the limit.
package api

//go:generate go test . -run TestDescriptionIsCommitted -update
