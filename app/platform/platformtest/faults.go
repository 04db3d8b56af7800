package platformtest

import (
	"bytes"

	"stillair/app/platform"
)

// faults are the failures of every file of a Memory.
type faults struct {
	write  error // what writes and syncs return, or nil
	sync   error // what syncs return, or nil
	hang   <-chan struct{}
	rename error // what replacing a file returns, or nil
	short  int   // bytes of a write that are accepted, without an error; 0: all
}

// Hang makes every later sync wait until let is closed; nil ends it.
func (m *Memory) Hang(let <-chan struct{}) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.faults.hang = let
}

type span struct{ from, to int }

// Fail makes every later write and sync return err, like storage that was made
// read-only; nil ends it.
func (m *Memory) Fail(err error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.faults.write = err
}

// FailSync makes every later sync return err and lose what it should have put
// on the disk, though it can be read until the power is cut; nil ends it for
// what follows.
func (m *Memory) FailSync(err error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.faults.sync = err
}

// FailRename makes replacing a file return err and change nothing; nil ends it.
func (m *Memory) FailRename(err error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.faults.rename = err
}

// ShortWrites makes every write accept at most n bytes and return no error; 0
// ends it.
func (m *Memory) ShortWrites(n int) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.faults.short = n
}

// CutPower returns what a restart would find: every file up to its last sync,
// and no lock held. The storage itself is unchanged.
func (m *Memory) CutPower() *Memory {
	return m.CutPowerLeaving(func([]byte) []byte { return nil })
}

// CutPowerLeaving is CutPower, but part of the unsynced data survives: tail
// gets those bytes of each file and returns what the disk holds of them.
func (m *Memory) CutPowerLeaving(tail func([]byte) []byte) *Memory {
	m.mu.Lock()
	defer m.mu.Unlock()
	after := NewMemory()
	for name, s := range m.files {
		data := bytes.Clone(s.data[:s.synced])
		for _, d := range s.doubted {
			clear(data[d.from:min(d.to, len(data))])
		}
		if len(s.data) > s.synced {
			data = append(data, tail(bytes.Clone(s.data[s.synced:]))...)
		}
		after.files[name] = &stored{data: data, synced: len(data)}
	}
	return after
}

type memoryFile struct {
	m *Memory
	s *stored
}

func (f *memoryFile) Write(p []byte) (int, error) {
	f.m.mu.Lock()
	defer f.m.mu.Unlock()
	if f.m.faults.write != nil {
		return 0, f.m.faults.write
	}
	if n := f.m.faults.short; n > 0 && n < len(p) {
		p = p[:n]
	}
	if err := f.m.take(int64(len(p))); err != nil {
		n := f.m.room // a full disk accepts what still fits
		f.s.data = append(f.s.data, p[:n]...)
		f.m.room = 0
		return int(n), err
	}
	f.s.data = append(f.s.data, p...)
	return len(p), nil
}

func (f *memoryFile) Sync() error {
	f.m.mu.Lock()
	hang := f.m.faults.hang
	f.m.mu.Unlock()
	if hang != nil {
		<-hang
	}
	f.m.mu.Lock()
	defer f.m.mu.Unlock()
	if f.m.faults.write != nil {
		return f.m.faults.write
	}
	if f.m.faults.sync != nil {
		if n := len(f.s.data); n > f.s.synced {
			f.s.doubted = append(f.s.doubted, span{f.s.synced, n})
			f.s.synced = n // a later sync has nothing to do for it
		}
		return f.m.faults.sync
	}
	f.s.synced = len(f.s.data)
	return nil
}

func (f *memoryFile) Close() error { return f.Sync() }

var _ platform.File = (*memoryFile)(nil)
