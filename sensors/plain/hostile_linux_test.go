package plain

import (
	"os"
	"os/exec"
	"syscall"
	"testing"
)

// TestHostileMemory runs TestHostile in a process of its own and looks at the
// most memory that it held.
func TestHostileMemory(t *testing.T) {
	const most = 200 << 10 // KiB
	cmd := exec.Command(os.Args[0], "-test.run=^TestHostile$")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	held := cmd.ProcessState.SysUsage().(*syscall.Rusage).Maxrss
	t.Logf("all hostile files together: %d MiB at most", held>>10)
	if held > most {
		t.Errorf("%d MiB, want at most %d", held>>10, most>>10)
	}
}
