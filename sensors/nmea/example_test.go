package nmea_test

import (
	"fmt"
	"strings"

	"stillair/sensors/nmea"
)

// The widely published sentence of 22.4 knots, after its time of arrival on the
// clock of the motion samples.
func ExampleReadBeside() {
	in := "12.21,$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\n"
	fixes, _, err := nmea.ReadBeside(strings.NewReader(in), "gnss.nmea", nmea.Span{From: 0, To: 60})
	if err != nil {
		fmt.Println(err)
	}
	for _, f := range fixes {
		fmt.Printf("%.2f s: %.2f m/s\n", f.T, f.Speed)
	}
	// Output: 12.21 s: 11.52 m/s
}
