package session

import (
	"bytes"
	"errors"
	"testing"

	"stillair/sensors"
)

// FuzzParts reads files made of the parts of three recordings, one of them of
// version 1, in any order, duplicated, torn, with flipped bits and rubbish in
// between: each recording contains only its own samples, and every part that is
// complete in the file is read.
func FuzzParts(f *testing.F) {
	one, two := invented(5, 4), invented(4, 4)
	for i := range two.Motion {
		two.Motion[i].Force.X = 77
	}
	pools := [][][]byte{cutUp(f, writtenAs(f, ID{1}, one)), cutUp(f, writtenAs(f, ID{2}, two))}
	var old [][]byte
	third := invented(3, 4)
	for i := range third.Motion {
		third.Motion[i].Force.X = 99
	}
	for _, p := range cutUp(f, writtenAs(f, ID{3}, third)) {
		text := bytes.Replace(unpacked(f, p), []byte(`"id":"`+ID{3}.String()+`",`), nil, 1)
		old = append(old, packed(bytes.NewReader(bytes.ReplaceAll(text, []byte(`"version":2`), []byte(`"version":1`)))))
	}
	pools = append(pools, old)
	f.Add([]byte{0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 2, 0})
	f.Add([]byte{0, 0, 0, 1, 1, 80, 2, 0, 0, 2, 1, 200, 0, 0, 130})
	f.Fuzz(func(t *testing.T, ops []byte) {
		var file bytes.Buffer
		whole := [3]map[int]bool{{}, {}, {}}
		for ; len(ops) >= 3; ops = ops[3:] {
			pool := pools[ops[0]%3]
			n := int(ops[1]) % len(pool)
			p := bytes.Clone(pool[n])
			switch action := ops[2]; {
			case action < 64:
				whole[ops[0]%3][n] = true
			case action < 128: // torn
				p = p[:len(p)*int(action-64)/64]
			case action < 192: // a bit flipped
				bit := (int(action-128)*131 + int(ops[1])*7919) % (8 * len(p))
				p[bit/8] ^= 1 << (bit % 8)
			default: // rubbish
				p = bytes.Repeat([]byte{ops[1], 0x1f, 0x8b, 8}, int(action-191))
			}
			file.Write(p)
		}
		all, err := ReadAll(bytes.NewReader(file.Bytes()), "any")
		var input *sensors.InputError
		if err != nil {
			if !errors.As(err, &input) || len(whole[0])+len(whole[1])+len(whole[2]) > 0 {
				t.Fatalf("%v", err)
			}
			return
		}
		got := [2]int{}
		for _, rec := range all {
			for _, m := range rec.Log.Motion {
				of := ID{1}
				switch m.Force.X {
				case 77:
					of = ID{2}
				case 99:
					of = ID{} // of version 1
				}
				if rec.Header.ID != of {
					t.Fatalf("the recording %s holds a reading of %s", rec.Header.ID, of)
				}
				if of != (ID{}) {
					got[of[0]-1]++
				}
			}
			checkSound(t, rec, nil)
		}
		for i, log := range []*sensors.Log{one, two} {
			if len(whole[i]) == len(pools[i]) && got[i] != len(log.Motion) {
				t.Fatalf("recording %d is whole in the file, and %d of %d readings came back", i+1, got[i], len(log.Motion))
			}
		}
	})
}
