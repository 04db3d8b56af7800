package nmea

import (
	"bytes"
	"encoding/hex"
	"math"
	"strconv"
	"strings"
	"time"

	"stillair/sensors/finding"
)

// Sentence is the content of one line. Missing numbers are NaN.
type Sentence struct {
	Talker string        // two letters, such as GP or GN
	Kind   string        // three letters: RMC, VTG, GGA, or one that is not read
	Valid  bool          // the receiver marks it as a measurement
	Clock  time.Duration // UTC since midnight; negative if the sentence has no time
	Date   time.Time     // UTC midnight; zero if the sentence has no date
	Speed  float64       // over ground, m/s
	Course float64       // degrees clockwise from true north, 0 to below 360
	LatDeg float64
	LonDeg float64
	Alt    float64 // above mean sea level, m
}

// Errors in a line.
var (
	ErrNoSentence = finding.Fail("nmea.no_sentence")
	ErrChecksum   = finding.Fail("nmea.checksum")
	ErrField      = finding.Fail("nmea.field")
)

// mpsPerKnot: one international nautical mile an hour (NIST SP 811).
const mpsPerKnot = 1852.0 / 3600

// Parse reads one line. Anything before the "$" is skipped.
func Parse(line []byte) (Sentence, error) {
	start := bytes.IndexByte(line, '$')
	if start < 0 {
		return Sentence{}, ErrNoSentence
	}
	body, sum, found := bytes.Cut(bytes.TrimSpace(line[start+1:]), []byte{'*'})
	var want [1]byte
	if !found || len(sum) != 2 {
		return Sentence{}, ErrChecksum
	}
	if _, err := hex.Decode(want[:], sum); err != nil || want[0] != checksum(body) {
		return Sentence{}, ErrChecksum
	}
	fields := strings.Split(string(body), ",")
	nan := math.NaN()
	s := Sentence{Clock: -1, Speed: nan, Course: nan, LatDeg: nan, LonDeg: nan, Alt: nan}
	address := fields[0]
	if len(address) != 5 || address[0] == 'P' { // P: a maker's own sentence
		return s, nil
	}
	s.Talker, s.Kind = address[:2], address[2:]
	p := &fieldReader{fields: fields}
	switch s.Kind {
	case "RMC":
		s.rmc(p)
	case "VTG":
		s.vtg(p)
	case "GGA":
		s.gga(p)
	}
	return s, p.err
}

func checksum(b []byte) (sum byte) {
	for _, c := range b {
		sum ^= c
	}
	return sum
}

// rmc: 1 time, 2 status, 3-6 position, 7 knots, 8 course, 9 date, 10-11
// magnetic variation, 12 mode (from version 2.3 on).
func (s *Sentence) rmc(p *fieldReader) {
	s.Clock = p.clock(1)
	s.Valid = p.text(2) == "A" && measured(p.text(12))
	s.LatDeg, s.LonDeg = p.position(3)
	s.Speed = p.number(7) * mpsPerKnot
	s.Course = course(p.number(8))
	s.Date = p.date(9)
	p.notNegative(s.Speed)
}

// vtg: 1 true course, 3 magnetic course, 5 knots, 7 km/h, 9 mode. Before
// version 2 the letters T, M, N, K between the numbers were absent.
func (s *Sentence) vtg(p *fieldReader) {
	if p.text(2) != "T" {
		s.Kind = "" // of a receiver older than its fields
		return
	}
	s.Valid = measured(p.text(9))
	s.Course = course(p.number(1))
	s.Speed = p.number(5) * mpsPerKnot
	if math.IsNaN(s.Speed) {
		s.Speed = p.number(7) / 3.6
	}
	p.notNegative(s.Speed)
}

// gga: 1 time, 2-5 position, 6 quality, 9 altitude, 10 its unit.
func (s *Sentence) gga(p *fieldReader) {
	s.Clock = p.clock(1)
	s.LatDeg, s.LonDeg = p.position(2)
	switch p.text(6) {
	case "1", "2", "3", "4", "5", "9": // autonomous, differential, PPS, RTK, float RTK, augmented
		s.Valid = true
	}
	if p.text(10) == "M" {
		s.Alt = p.number(9)
	}
}

// measured reports whether a mode stands for a measurement; receivers before
// version 2.3 send none.
func measured(mode string) bool {
	switch mode {
	case "", "A", "D", "P", "R", "F":
		return true
	}
	return false
}

func course(deg float64) float64 {
	if deg < 0 || deg > 360 {
		return math.NaN()
	}
	return math.Mod(deg, 360)
}

// fieldReader keeps the first error.
type fieldReader struct {
	fields []string
	err    error
}

func (p *fieldReader) text(i int) string {
	if i < len(p.fields) {
		return strings.TrimSpace(p.fields[i])
	}
	return ""
}

func (p *fieldReader) fail(i int, what finding.Code) {
	if s := p.text(i); p.err == nil {
		p.err = finding.Fail(ErrField.Code, finding.Of("what", finding.New(what)), finding.Text("value", strings.ToValidUTF8(s[:min(len(s), 20)], "�")))
	}
}

// decimals reports whether s is digits with at most one point, as the standard
// writes numbers, and not one of the other forms that strconv accepts.
func decimals(s string) bool {
	return strings.Trim(s, "0123456789.") == "" && strings.Count(s, ".") <= 1
}

func (p *fieldReader) number(i int) float64 {
	s := p.text(i)
	if s == "" {
		return math.NaN()
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || !decimals(strings.TrimPrefix(s, "-")) {
		p.fail(i, "nmea.number")
		return math.NaN()
	}
	return v
}

func (p *fieldReader) notNegative(v float64) {
	if v < 0 && p.err == nil {
		p.err = finding.Fail("nmea.negative_speed").Because(ErrField)
	}
}
