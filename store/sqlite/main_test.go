package sqlite

import (
	"os"
	"testing"
)

// again are the parts of tests that run in a process of their own, by the variable that asks for them.
var again = map[string]func(value string){writerEnv: writeForever}

func TestMain(m *testing.M) {
	for name, part := range again {
		if value := os.Getenv(name); value != "" {
			part(value)
			return
		}
	}
	os.Exit(m.Run())
}
