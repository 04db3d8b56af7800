package memtest

import (
	"os"
	"os/exec"
	"syscall"
	"testing"
)

// AtMost runs the named test of the calling test's binary in a separate
// process, and fails if that ever used more than mib MiB.
func AtMost(t *testing.T, name string, mib int64) {
	t.Helper()
	if testing.Short() {
		t.Skip("runs a test once more")
	}
	cmd := exec.Command(os.Args[0], "-test.run=^"+name+"$")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	held := cmd.ProcessState.SysUsage().(*syscall.Rusage).Maxrss >> 10
	t.Logf("%s held %d MiB at most", name, held)
	if held > mib {
		t.Errorf("%s held %d MiB, want at most %d", name, held, mib)
	}
}
