package session_test

import (
	"bytes"
	"fmt"

	"stillair/export/session"
	"stillair/sensors"
)

// memory is a store that keeps a session in memory.
type memory struct{ bytes.Buffer }

func (m *memory) Append(p []byte) error { _, err := m.Write(p); return err }
func (m *memory) Sync() error           { return nil }

// A log is written as a session file and read back.
func ExampleWrite() {
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	for i := range 200 {
		m := sensors.Motion{T: float64(i) / 100}
		m.Force.Z = 9.81
		log.Motion = append(log.Motion, m)
	}
	var store memory
	if err := session.Write(&store, log, session.Header{ID: session.ID{1, 2, 3}, Device: "invented"}); err != nil {
		fmt.Println(err)
		return
	}
	rec, err := session.Read(&store.Buffer, "ride.jsonl.gz")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(rec.Log.Motion), "readings, closed:", rec.Closed)
	// Output: 200 readings, closed: true
}
