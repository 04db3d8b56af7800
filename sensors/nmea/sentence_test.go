package nmea

import (
	"errors"
	"math"
	"testing"
	"time"
)

var nan = math.NaN()

func day(y, m, d int) time.Time { return time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC) }

func clock(h, m int, s float64) time.Duration {
	return time.Duration(h)*time.Hour + time.Duration(m)*time.Minute + time.Duration(math.Round(s*1e9))
}

// TestPublishedSentences reads published sentences and compares with their
// published meaning.
func TestPublishedSentences(t *testing.T) {
	for _, c := range []struct {
		source, line string
		want         Sentence
	}{
		{"D. DePriest, gpsinformation.org/dale/nmea.htm, GGA",
			"$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47",
			Sentence{Talker: "GP", Kind: "GGA", Valid: true, Clock: clock(12, 35, 19), Speed: nan, Course: nan,
				LatDeg: 48 + 7.038/60, LonDeg: 11 + 31.0/60, Alt: 545.4}},
		{"the same, RMC: 22.4 knots, course 84.4, 23 March 1994",
			"$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A",
			Sentence{Talker: "GP", Kind: "RMC", Valid: true, Clock: clock(12, 35, 19), Date: day(1994, 3, 23),
				Speed: 22.4 * 1852 / 3600, Course: 84.4, LatDeg: 48 + 7.038/60, LonDeg: 11 + 31.0/60, Alt: nan}},
		{"the same, VTG: 5.5 knots, 10.2 km/h",
			"$GPVTG,054.7,T,034.4,M,005.5,N,010.2,K*48",
			Sentence{Talker: "GP", Kind: "VTG", Valid: true, Clock: -1, Speed: 5.5 * 1852 / 3600, Course: 54.7,
				LatDeg: nan, LonDeg: nan, Alt: nan}},
		{"P. Bennett's NMEA 0183 FAQ, from memory; gpsd's NMEA Revealed quotes it: 49°16.45' N, 123°11.12' W, 19 November 1994",
			"$GPRMC,225446,A,4916.45,N,12311.12,W,000.5,054.7,191194,020.3,E*68",
			Sentence{Talker: "GP", Kind: "RMC", Valid: true, Clock: clock(22, 54, 46), Date: day(1994, 11, 19),
				Speed: 0.5 * 1852 / 3600, Course: 54.7, LatDeg: 49 + 16.45/60, LonDeg: -(123 + 11.12/60), Alt: nan}},
		{"README of hex.pm/packages/nmea, u-blox 6 receiver",
			"$GPRMC,092751.000,A,5321.6802,N,00630.3371,W,0.06,31.66,280511,,,A*45",
			Sentence{Talker: "GP", Kind: "RMC", Valid: true, Clock: clock(9, 27, 51), Date: day(2011, 5, 28),
				Speed: 0.06 * 1852 / 3600, Course: 31.66, LatDeg: 53 + 21.6802/60, LonDeg: -(6 + 30.3371/60), Alt: nan}},
		{"Garmin GPS 12XL, courses.cs.washington.edu LakeMan notes: course 360 is north",
			"$GPRMC,175741,A,4751.698,N,12209.774,W,000.0,360.0,191100,019.5,E*69",
			Sentence{Talker: "GP", Kind: "RMC", Valid: true, Clock: clock(17, 57, 41), Date: day(2000, 11, 19),
				Speed: 0, Course: 0, LatDeg: 47 + 51.698/60, LonDeg: -(122 + 9.774/60), Alt: nan}},
		{"em38 package, process_rmc, southern and eastern",
			"$GPRMC,015808.00,A,2726.53758,S,15126.05255,E,0.32,208.02,160318,,,A*48",
			Sentence{Talker: "GP", Kind: "RMC", Valid: true, Clock: clock(1, 58, 8), Date: day(2018, 3, 16),
				Speed: 0.32 * 1852 / 3600, Course: 208.02, LatDeg: -(27 + 26.53758/60), LonDeg: 151 + 26.05255/60, Alt: nan}},
	} {
		got, err := Parse([]byte(c.line + "\r\n"))
		if err != nil {
			t.Errorf("%s: %v", c.source, err)
			continue
		}
		if !same(got, c.want) {
			t.Errorf("%s:\n got %+v\nwant %+v", c.source, got, c.want)
		}
	}
}

func same(a, b Sentence) bool {
	close := func(x, y float64) bool {
		return math.IsNaN(x) && math.IsNaN(y) || math.Abs(x-y) < 1e-9
	}
	return a.Talker == b.Talker && a.Kind == b.Kind && a.Valid == b.Valid && a.Clock == b.Clock && a.Date.Equal(b.Date) &&
		close(a.Speed, b.Speed) && close(a.Course, b.Course) && close(a.LatDeg, b.LatDeg) && close(a.LonDeg, b.LonDeg) && close(a.Alt, b.Alt)
}

// line closes a sentence body with its checksum.
func line(body string) []byte {
	const hexDigits = "0123456789ABCDEF"
	sum := checksum([]byte(body))
	return []byte("$" + body + "*" + string(hexDigits[sum>>4]) + string(hexDigits[sum&15]) + "\r\n")
}

func TestTalkers(t *testing.T) {
	for _, talker := range []string{"GP", "GN", "GL", "GA", "GB", "GQ", "BD", "II"} {
		s, err := Parse(line(talker + "RMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,,,A"))
		if err != nil || s.Talker != talker || !s.Valid {
			t.Errorf("%s: %+v, %v", talker, s, err)
		}
	}
	s, err := Parse(line("PGRME,15.0,M,22.5,M,15.0,M"))
	if err != nil || s.Kind != "" {
		t.Errorf("a maker's own sentence: %+v, %v; want it passed over", s, err)
	}
}

func TestValidity(t *testing.T) {
	for _, c := range []struct {
		name, body string
		valid      bool
	}{
		{"RMC warning", "GPRMC,123519,V,4807.038,N,01131.000,E,022.4,084.4,230394,,", false},
		{"RMC active before modes were sent", "GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,,", true},
		{"RMC differential", "GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,,,D", true},
		{"RMC estimated by dead reckoning", "GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,,,E", false},
		{"RMC not valid", "GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,,,N", false},
		{"GGA without a fix", "GPGGA,123519,,,,,0,00,,,M,,M,,", false},
		{"GGA estimated", "GPGGA,123519,4807.038,N,01131.000,E,6,08,0.9,545.4,M,46.9,M,,", false},
		{"VTG not valid", "GNVTG,,T,,M,,N,,K,N", false},
		{"VTG at rest has no course", "GNVTG,,T,,M,0.01,N,0.02,K,A", true},
	} {
		s, err := Parse(line(c.body))
		if err != nil || s.Valid != c.valid {
			t.Errorf("%s: valid %v, error %v; want valid %v", c.name, s.Valid, err, c.valid)
		}
	}
}

func TestBadLines(t *testing.T) {
	for _, c := range []struct {
		name string
		line []byte
		want error
	}{
		{"empty", nil, ErrNoSentence},
		{"text", []byte("hello"), ErrNoSentence},
		{"one bit wrong", []byte("$GPGGA,123518,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47"), ErrChecksum},
		{"no checksum", []byte("$GPVTG,054.7,T,034.4,M,005.5,N,010.2,K"), ErrChecksum},
		{"cut in the checksum", []byte("$GPVTG,054.7,T,034.4,M,005.5,N,010.2,K*4"), ErrChecksum},
		{"letters in the speed", line("GPVTG,054.7,T,034.4,M,fast,N,010.2,K"), ErrField},
		{"hexadecimal speed", line("GPVTG,054.7,T,034.4,M,0x10,N,010.2,K"), ErrField},
		{"infinite speed", line("GPVTG,054.7,T,034.4,M,Inf,N,010.2,K"), ErrField},
		{"negative speed", line("GPVTG,054.7,T,034.4,M,-5,N,010.2,K"), ErrField},
		{"75 minutes of arc", line("GPRMC,123519,A,4875.038,N,01131.000,E,022.4,084.4,230394,,"), ErrField},
		{"95 degrees north", line("GPRMC,123519,A,9507.038,N,01131.000,E,022.4,084.4,230394,,"), ErrField},
		{"neither north nor south", line("GPRMC,123519,A,4807.038,X,01131.000,E,022.4,084.4,230394,,"), ErrField},
		{"25 o'clock", line("GPRMC,253519,A,4807.038,N,01131.000,E,022.4,084.4,230394,,"), ErrField},
		{"31 February", line("GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,310294,,"), ErrField},
	} {
		if _, err := Parse(c.line); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
}

func FuzzParse(f *testing.F) {
	f.Add([]byte("$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47"))
	f.Add([]byte("12.5,$GPRMC,225446,A,4916.45,N,12311.12,W,000.5,054.7,191194,020.3,E*68\r\n"))
	f.Add([]byte("$GPVTG,054.7,T,034.4,M,005.5,N,010.2,K*48"))
	f.Add(line("GNRMC,235960.99,A,,,,,,,311299,,,A"))
	f.Fuzz(func(t *testing.T, b []byte) {
		// Half of the inputs get a correct checksum, or none would pass it.
		for _, in := range [][]byte{b, line(string(b))} {
			s, err := Parse(in)
			if err != nil {
				continue
			}
			if s.Speed < 0 || math.IsInf(s.Speed, 0) || s.Course < 0 || s.Course >= 360 || math.Abs(s.LatDeg) > 90 ||
				math.Abs(s.LonDeg) > 180 || math.IsNaN(s.LatDeg) != math.IsNaN(s.LonDeg) || s.Clock > 25*time.Hour {
				t.Errorf("%q gives %+v", in, s)
			}
		}
	})
}
