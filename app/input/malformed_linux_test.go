package input

import (
	"os"
	"os/exec"
	"syscall"
	"testing"
)

// TestMalformedMemory opens the malformed files in a separate process and checks
// its peak memory, which includes making the files.
func TestMalformedMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("runs a test once more")
	}
	const most = 200 // MB
	cmd := exec.Command(os.Args[0], "-test.run=^TestMalformedFiles$")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	held := cmd.ProcessState.SysUsage().(*syscall.Rusage).Maxrss * 1024 / 1e6
	t.Logf("%d MB at most", held)
	if held > most {
		t.Errorf("%d MB, want at most %d MB", held, most)
	}
}
