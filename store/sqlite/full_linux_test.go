package sqlite

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// tinyEnv names the folder over which this test binary, started again in rooms of its own, lays a disk of a few megabytes.
const tinyEnv = "OAKUM_TEST_TINY_DISK"

// A real disk that is full, in a mount namespace of its own so that nobody needs to be root; where the machine allows no such namespace it is left out.
func TestAFullDiskRefusesInWordsAndLosesNothing(t *testing.T) {
	run := func(what string) (string, error) {
		c := exec.Command(os.Args[0])
		c.Env = append(os.Environ(), tinyEnv+"="+t.TempDir(), tinyEnv+"_ONLY="+what)
		c.SysProcAttr = &syscall.SysProcAttr{Cloneflags: syscall.CLONE_NEWUSER | syscall.CLONE_NEWNS,
			UidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getuid(), Size: 1}}, GidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getgid(), Size: 1}}}
		out, err := c.CombinedOutput()
		return string(out), err
	}
	if out, err := run("mount"); err != nil {
		t.Skipf("this machine lets nobody mount a small disk: %v %s", err, out)
	}
	out, err := run("fill")
	if err != nil || !strings.Contains(out, "the disk is full") {
		t.Fatalf("%v: %s", err, out)
	}
	t.Log(out)
}

func init() {
	again[tinyEnv] = func(dir string) {
		if err := onTinyDisk(dir); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
	}
}

// onTinyDisk is the test started again.
func onTinyDisk(dir string) error {
	if err := syscall.Mount("none", dir, "tmpfs", 0, "size=3m"); err != nil {
		return err
	}
	if os.Getenv(tinyEnv+"_ONLY") == "mount" {
		return nil
	}
	s, err := Create(context.Background(), filepath.Join(dir, "ship.oakum"))
	if err != nil {
		return err
	}
	defer s.Close()
	ballast := filepath.Join(dir, "something else")
	if err := os.WriteFile(ballast, make([]byte, 2<<20), 0o600); err != nil {
		return err
	}
	said, err := fillUp(s, func() { os.Remove(ballast) })
	if err != nil {
		return err
	}
	fmt.Println(said)
	s.Close()
	again, err := Open(context.Background(), filepath.Join(dir, "ship.oakum"))
	if err != nil {
		return err
	}
	return again.Close()
}
