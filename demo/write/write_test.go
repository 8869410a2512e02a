package main

import (
	"os"
	"path/filepath"
	"testing"
)

// The committed folders are what the program writes: nobody edits them by hand.
func TestCommittedFoldersAreWhatTheProgramWrites(t *testing.T) {
	dir := t.TempDir()
	if err := write(dir); err != nil {
		t.Fatal(err)
	}
	made := files(t, dir)
	for name, data := range made {
		committed, err := os.ReadFile(filepath.Join("..", name))
		if err != nil {
			t.Errorf("%s is not committed: run go run ./demo/write", name)
			continue
		}
		if string(committed) != data {
			t.Errorf("%s is not what the program writes: run go run ./demo/write", name)
		}
	}
	for _, tale := range tales {
		for name := range files(t, filepath.Join("..", tale.folder)) {
			if _, ok := made[filepath.Join(tale.folder, name)]; !ok {
				t.Errorf("%s/%s is committed but no longer written", tale.folder, name)
			}
		}
	}
}

// files reads every file under a folder by its path from there.
func files(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		name, err := filepath.Rel(dir, path)
		out[name] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}
