package plain_test

import (
	"fmt"
	"os"
	"path/filepath"

	"stillair/sensors/plain"
)

// A log as a spreadsheet might save it: two columns of time and speed are
// enough for the satellites, four for the accelerometer.
func ExampleRead() {
	dir, err := os.MkdirTemp("", "ride")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(dir)
	files := map[string]string{"motion.csv": "t_s,ax_mps2,ay_mps2,az_mps2\n", "gnss.csv": "t_s,speed_mps\n"}
	for i := range 100 {
		files["motion.csv"] += fmt.Sprintf("%.2f,0.02,-0.01,9.81\n", float64(i)/50)
	}
	files["gnss.csv"] += "0.9,0.00\n1.9,0.02\n"
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			fmt.Println(err)
		}
	}
	log, err := plain.Read(dir)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(log.Motion), "readings,", len(log.Fixes), "fixes")
	// Output: 100 readings, 2 fixes
}
