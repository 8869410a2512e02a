package main

import (
	"bytes"
	"os"
	"testing"
)

func TestListIsUpToDate(t *testing.T) {
	want, err := os.ReadFile("../../docs/methods.md")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(list(), want) {
		t.Error("docs/methods.md is stale: run `make generate` and commit it")
	}
}
