package shell_test

import (
	"bytes"
	"context"
	"math"
	"testing"

	"stillair/export/results"
	"stillair/export/session"
	"stillair/export/share"
	"stillair/runs"
)

// readSession reads a shared session, or the longest shared one if data is nil.
func readSession(t *testing.T, data []byte, out *outlet) *session.Recording {
	t.Helper()
	if data == nil {
		for _, d := range out.shared {
			if len(d) > len(data) && session.IsSession(d) {
				data = d
			}
		}
	}
	rec, err := session.Read(bytes.NewReader(data), "shared")
	if err != nil {
		t.Fatal(err)
	}
	return rec
}

// sameAsDesk checks that the results shared by the phone are, byte for byte,
// what the desk program exports for the same session with the same cut.
func (h hand) sameAsDesk(rec *session.Recording, phone []byte) {
	h.t.Helper()
	log, cut := rec.Log, share.Default()
	res, err := runs.Analyse(context.Background(), log, runs.Options{})
	if err != nil {
		h.t.Fatal(err)
	}
	var desk bytes.Buffer
	d := results.From(share.Result(res, log, cut))
	start := rec.Header.Start
	if math.IsNaN(start) { // dated from its first sample
		start = log.Begin()
	}
	_, began := share.WindowOf(log, cut).Began(start, rec.Header.Started, cut.Date)
	d.Began(began)
	if err := results.Write(&desk, d); err != nil || began.IsZero() {
		h.t.Fatal(err)
	}
	if !bytes.Equal(desk.Bytes(), phone) {
		h.t.Errorf("the phone's results differ from the desk's (%d and %d bytes)", len(phone), desk.Len())
	}
}
