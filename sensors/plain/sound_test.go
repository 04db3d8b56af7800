package plain

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"stillair/sensors"
)

// heard is two seconds of invented sound that is the same after writing and reading.
func heard(seed uint64) []sensors.Sound {
	rng := rand.New(rand.NewPCG(seed, 9))
	var sounds []sensors.Sound
	for i := range 8 {
		s := sensors.Sound{T: 3 + float64(i)/4 + 1e-4*rng.Float64(), Rate: 1191.8919, Clipped: i % 3}
		for range 1 + rng.IntN(290) {
			s.Level = append(s.Level, int16(rng.Uint32()))
		}
		sounds = append(sounds, s)
	}
	return sounds
}

// withSound is the small log with a sound.csv.
func withSound(text string) fstest.MapFS {
	files := sheet(nil)
	files[soundFile] = &fstest.MapFile{Data: []byte(text)}
	return files
}

func TestSoundIsReadBack(t *testing.T) {
	for seed := range uint64(20) {
		want := random(seed)
		at := want.Motion[0].T - 3
		for _, s := range heard(seed) {
			s.T += at
			want.Sound = append(want.Sound, s)
		}
		var z bytes.Buffer
		if err := WriteZip(&z, want); err != nil {
			t.Fatal(err)
		}
		got, err := ReadZip(bytes.NewReader(z.Bytes()), int64(z.Len()), "ride.zip")
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(got.Sound, want.Sound) {
			t.Fatalf("seed %d: sound came back changed", seed)
		}
	}
}

func TestOddSound(t *testing.T) {
	const head = "t_s,rate_hz,level\n"
	const good = "5,1200,1 2 3\n6,1200,-32768 32767\n7,1200,0\n"
	for _, c := range []struct {
		name, text, note string
		stretches        int
	}{
		{"good", head + good, "", 3},
		{"columns in another order", "level,clipped,t_s,rate_hz\n1 2,4,5,1200\n", "", 1},
		{"no clipped, other blanks", head + "5,1200,\"  1\t2  3 \"\n", "", 1},
		{"beyond full scale", head + good + "8,1200,40000\n", "sound.no_levels", 3},
		{"no values", head + good + "8,1200,\n", "sound.no_levels", 3},
		{"words", head + good + "8,1200,loud\n", "sound.no_levels", 3},
		{"no rate", head + good + "8,0,1\n", "sound.no_rate rate=0", 3},
		{"a rate of words", head + good + "8,fast,1\n", `plain.no_number column="rate_hz" value="fast"`, 3},
		{"late", head + good + "5.5,1200,9\n", "input.sorted", 4},
		{"over another", head + good + "5.001,1200,9\n", "sound.overlaps", 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, err := ReadFS(withSound(c.text), "ride")
			if err != nil {
				t.Fatal(err)
			}
			if len(log.Sound) != c.stretches {
				t.Errorf("%d stretches, want %d", len(log.Sound), c.stretches)
			}
			var notes []string
			for _, n := range log.Notes {
				if strings.HasSuffix(n.File, soundFile) {
					notes = append(notes, n.What.String())
				}
			}
			if all := strings.Join(notes, "\n"); !strings.Contains(all, c.note) || c.note == "" && all != "" {
				t.Errorf("notes %q, want one with %q", all, c.note)
			}
		})
	}
}

func TestBadSound(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"no levels", "t_s,rate_hz\n5,1200\n", `plain.column_missing column="level"`},
		{"mostly rubbish", "t_s,rate_hz,level\n5,1200,1\n6,1200,x\n7,1200,y\n", "plain.bad_rows bad=2 of=3"},
		{"another clock", "t_s,rate_hz,level\n1e6,1200,1\n", "plain.other_clock"},
	} {
		_, err := ReadFS(withSound(c.text), "ride")
		var input *sensors.InputError
		if !errors.As(err, &input) || input.Remedy.IsZero() || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want an InputError with %q and a remedy", c.name, err, c.want)
		}
	}
}

// FuzzSound reads a sound.csv of any text.
func FuzzSound(f *testing.F) {
	f.Add("t_s,rate_hz,level,clipped\n5,1200,1 2 3,4\n5.001,1200,4,\n")
	f.Add("t_s,rate_hz,level\n1e308,1e-308,1\n")
	f.Fuzz(func(t *testing.T, text string) {
		log, err := ReadFS(withSound(text), "ride")
		mustBeSound(t, log, err)
		if err != nil {
			return
		}
		for i, s := range log.Sound {
			if len(s.Level) == 0 || !(s.Rate > 0) || i > 0 && !s.Follows(log.Sound[i-1]) {
				t.Fatalf("stretch %d is %+v", i, s)
			}
		}
	})
}
