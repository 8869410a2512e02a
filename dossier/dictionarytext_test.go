package dossier

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

func TestTheDictionaryIsUpToDate(t *testing.T) {
	have, err := os.ReadFile("../docs/data-dictionary.md")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(have, Dictionary()) {
		t.Error("docs/data-dictionary.md is stale: run go generate ./dossier")
	}
}

func TestTheDictionaryNamesEveryColumn(t *testing.T) {
	text := string(Dictionary())
	for _, k := range Kinds() {
		for _, f := range k.Fields {
			if !strings.Contains(text, "| "+headOf(f, "money")+" |") {
				t.Errorf("%s.%s is missing", k.Name, f.Key)
			}
		}
	}
	for _, h := range headColumns {
		if !strings.Contains(text, "| "+h+" |") {
			t.Errorf("%s is missing", h)
		}
	}
}
