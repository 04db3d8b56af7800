package session

import (
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"

	"stillair/sensors"
)

// packed returns text as one gzip member.
func packed(parts ...io.Reader) []byte {
	var b bytes.Buffer
	gz, _ := gzip.NewWriterLevel(&b, gzip.BestSpeed)
	for _, p := range parts {
		_, _ = io.Copy(gz, p)
	}
	_ = gz.Close()
	return b.Bytes()
}

// endless is n bytes of one pattern.
func endless(pattern string, n int64) io.Reader {
	return io.LimitReader(&repeat{pattern: pattern}, n)
}

type repeat struct {
	pattern string
	at      int
}

func (r *repeat) Read(p []byte) (int, error) {
	for n := 0; n < len(p); {
		k := copy(p[n:], r.pattern[r.at:])
		n, r.at = n+k, (r.at+k)%len(r.pattern)
	}
	return len(p), nil
}

const headerLine = `{"type":"part","n":1,"from_s":1,"to_s":2}` + "\n" + `{"type":"header","format":"stillair session","version":1}` + "\n"

// TestMalformed reads adversarial files: each must give a clear error or a log
// with notes, in bounded memory.
func TestMalformed(t *testing.T) {
	gigabyte, much := int64(1<<30), int64(1<<28)
	if testing.Short() {
		gigabyte, much = 1<<24, 1<<25
	}
	tests := []struct {
		name, says string
		data       []byte
	}{
		{"a line of a gigabyte", "session.no_whole_part", packed(strings.NewReader(headerLine), endless(`{"type":"motion","t_s":[1,`, gigabyte))},
		{"no end of zeros", "session.no_whole_part", packed(endless("\x00", much))},
		{"no end of short lines", "session.only_gzip", packed(endless("x\n", much))},
		{"no end of states", "session.too_much", packed(strings.NewReader(headerLine), endless(`{"type":"state","t_s":1,"sensor":"motion","condition":"working"}`+"\n", much))},
		{"no end of the same second", "session.too_much", packed(strings.NewReader(headerLine), endless(`{"type":"motion","t_s":[1,1],"ax_mps2":[1,1],"ay_mps2":[1,1],"az_mps2":[1,1]}`+"\n", much))},
		{"no end of silence", "session.too_much", packed(strings.NewReader(headerLine), endless(`{"type":"sound","t_s":1,"rate_hz":1200,"level":[0`+strings.Repeat(",0", 5000)+"]}\n", much))},
		{"no end of short sounds", "session.too_much", packed(strings.NewReader(headerLine), endless(`{"type":"sound","t_s":1,"rate_hz":1200,"level":[0]}`+"\n", much))},
		{"no end of setups", "session.too_much", packed(strings.NewReader(headerLine), endless(`{"type":"ride","ride":{"setups":[{"name":"`+strings.Repeat("a", 1000)+`"}]}}`+"\n", much))},
		{"fixes after a good part", "", append(packed(strings.NewReader(headerLine+`{"type":"fix","t_s":1,"speed_mps":1}`)), packed(endless(`{"type":"fix","t_s":1,"speed_mps":1}`+"\n", much))...)},
		{"a part's beginning a million times", "session.no_whole_part", bytes.Repeat([]byte{0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 255, 0}, 1_000_000)},
	}
	for _, tt := range tests {
		var before, after runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&before)
		rec, err := Read(bytes.NewReader(tt.data), "malformed.jsonl.gz")
		runtime.ReadMemStats(&after)
		var input *sensors.InputError
		switch {
		case tt.says != "" && !errors.As(err, &input):
			t.Errorf("%s: %v", tt.name, err)
		case tt.says != "" && (!strings.Contains(err.Error(), tt.says) || input.Remedy.IsZero() || !strings.HasPrefix(err.Error(), "malformed.jsonl.gz")):
			t.Errorf("%s: the error %q does not say %q", tt.name, err, tt.says)
		case tt.says == "" && (err != nil || len(rec.Log.Notes) == 0):
			t.Errorf("%s: %v", tt.name, err)
		}
		if grown := int64(after.Sys) - int64(before.Sys); grown > 200<<20 {
			t.Errorf("%s: memory grew by %d MiB", tt.name, grown>>20)
		}
	}
}

// TestRefused checks the errors for input of the wrong kind.
func TestRefused(t *testing.T) {
	tests := []struct {
		name, says string
		data       []byte
	}{
		{"empty", "session.no_gzip", nil},
		{"plain text", "session.no_gzip", []byte("t_s,ax_mps2\n")},
		{"another gzip file", "session.only_gzip", packed(strings.NewReader("t_s,ax_mps2\n1,2\n"))},
		{"a later version", `version="3"`, packed(strings.NewReader(`{"type":"header","format":"stillair session","version":3}`))},
		{"another format", `"diary"`, packed(strings.NewReader(`{"type":"header","format":"diary","version":1}`))},
		{"other axes", "session.other_axes", packed(strings.NewReader(`{"type":"header","format":"stillair session","version":1,"axes":"nose down"}`))},
	}
	for _, tt := range tests {
		_, err := Read(bytes.NewReader(tt.data), "f.gz")
		var input *sensors.InputError
		if !errors.As(err, &input) || !strings.Contains(err.Error(), tt.says) || input.Remedy.IsZero() || input.File != "f.gz" {
			t.Errorf("%s: %v", tt.name, err)
		}
	}
}

// TestOddLines checks that invalid lines are left out with a note, and that the
// rest is kept.
func TestOddLines(t *testing.T) {
	tests := []struct{ name, line, note string }{
		{"not JSON", `{"type":"motion`, "session.not_json"},
		{"not JSON at all", `hello`, "session.not_json"},
		{"unknown type", `{"type":"moon"}`, `session.unknown_type type="moon"`},
		{"columns of unequal length", `{"type":"motion","t_s":[1,2],"ax_mps2":[1],"ay_mps2":[1,1],"az_mps2":[1,2]}`, "session.motion_columns"},
		{"a column that is text", `{"type":"motion","t_s":["a"],"ax_mps2":[1],"ay_mps2":[1],"az_mps2":[1]}`, "session.motion_columns"},
		{"no force", `{"type":"motion","t_s":[1]}`, "session.motion_columns"},
		{"half a gyroscope", `{"type":"motion","t_s":[1],"ax_mps2":[1],"ay_mps2":[1],"az_mps2":[1],"gx_radps":[1]}`, "session.motion_columns"},
		{"a null time", `{"type":"motion","t_s":[null],"ax_mps2":[1],"ay_mps2":[1],"az_mps2":[1]}`, "session.motion_incomplete"},
		{"a fix without speed", `{"type":"fix","t_s":1}`, "session.fix_incomplete"},
		{"a pressure that is no number", `{"type":"pressure","t_s":[1],"pressure_pa":[null]}`, "session.pressure_incomplete"},
		{"a ride that is a number", `{"type":"ride","ride":7}`, "session.ride_left_out"},
		{"sound without a time", `{"type":"sound","rate_hz":1200,"level":[1]}`, "session.sound_incomplete"},
		{"sound at a standstill", `{"type":"sound","t_s":1,"rate_hz":0,"level":[1]}`, "session.sound_incomplete"},
		{"sound without levels", `{"type":"sound","t_s":1,"rate_hz":1200,"level":[]}`, "session.sound_empty"},
		{"sound beyond full scale", `{"type":"sound","t_s":1,"rate_hz":1200,"level":[1,32768]}`, "session.sound_level"},
		{"sound that is null", `{"type":"sound","t_s":1,"rate_hz":1200,"level":[null]}`, "session.sound_level"},
		{"a state without time", `{"type":"state","sensor":"motion"}`, "session.state_incomplete"},
	}
	good := `{"type":"motion","t_s":[1e0,1.5],"ax_mps2":[-0.5,1],"ay_mps2":[1,1],"az_mps2":[1,2], "later":{"a":[1]}}` + "\n"
	for _, tt := range tests {
		rec := read(t, packed(strings.NewReader(headerLine+tt.line+"\n"+good)))
		if len(rec.Log.Motion) != 2 || rec.Log.Motion[0].Force.X != -0.5 || rec.Log.Motion[0].HasTurn() {
			t.Errorf("%s: motion %v", tt.name, rec.Log.Motion)
		}
		notes := fmt.Sprint(rec.Log.Notes)
		if !strings.Contains(notes, tt.note) || !strings.Contains(notes, "ride.jsonl.gz:3") {
			t.Errorf("%s: notes %s", tt.name, notes)
		}
	}
}

// TestOutOfOrder checks that samples out of order are sorted, duplicates are
// removed and both are reported.
func TestOutOfOrder(t *testing.T) {
	text := headerLine + `{"type":"fix","t_s":3,"speed_mps":3}
{"type":"fix","t_s":1,"speed_mps":1}
{"type":"fix","t_s":2,"speed_mps":2}
{"type":"fix","t_s":2,"speed_mps":9}
`
	rec := read(t, packed(strings.NewReader(text)))
	if len(rec.Log.Fixes) != 3 || rec.Log.Fixes[1].Speed != 2 || rec.Log.Fixes[2].T != 3 {
		t.Errorf("fixes %v", rec.Log.Fixes)
	}
	if n := fmt.Sprint(rec.Log.Notes); !strings.Contains(n, "session.sorted") || !strings.Contains(n, "session.doubled") {
		t.Errorf("notes %s", n)
	}
}
