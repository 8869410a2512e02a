package api

import (
	"bytes"
	"flag"
	"os"
	"testing"
)

var update = flag.Bool("update", false, "write the description anew")

// The description is generated from the types and committed: it must not change unseen.
func TestDescriptionIsCommitted(t *testing.T) {
	got, err := Description()
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("openapi.yaml", got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile("openapi.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Error("the description changed: raise version in server.go if a route or type changed for its callers, run `make generate`, and commit api/openapi.yaml")
	}
}
