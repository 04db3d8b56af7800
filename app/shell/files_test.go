package shell_test

import (
	"bytes"
	"context"
	"testing"

	"stillair/export/results"
	"stillair/export/session"
	"stillair/export/share"
	"stillair/runs"
	"stillair/sensors"
)

// readSession reads a shared session, the longest that was shared where data
// is nil.
func readSession(t *testing.T, data []byte, out *outlet) *sensors.Log {
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
	return rec.Log
}

// sameAsDesk holds that what the phone shares as results is, byte for byte,
// what anybody gets who analyses the same session elsewhere and gives it away
// with the same cut.
func (h hand) sameAsDesk(log *sensors.Log, phone []byte) {
	h.t.Helper()
	res, err := runs.Analyse(context.Background(), log, runs.Options{})
	if err != nil {
		h.t.Fatal(err)
	}
	var desk bytes.Buffer
	if err := results.Write(&desk, results.From(share.Result(res, log, share.Default()))); err != nil {
		h.t.Fatal(err)
	}
	if !bytes.Equal(desk.Bytes(), phone) {
		h.t.Errorf("the phone's results differ from the desk's (%d and %d bytes)", len(phone), desk.Len())
	}
}
