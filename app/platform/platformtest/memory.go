package platformtest

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"slices"
	"sync"
	"time"

	"stillair/app/platform"
)

// Memory implements platform.Files in memory. It can run full, fail, and lose
// unsynced data as a real storage does in a power cut.
type Memory struct {
	mu     sync.Mutex
	files  map[string]*stored
	locks  map[string]bool
	room   int64 // bytes left; negative: no limit
	faults faults
}

type stored struct {
	data    []byte
	synced  int
	doubted []span // not on the disk, though a later sync said so
}

// NewMemory returns an empty storage without limit.
func NewMemory() *Memory {
	return &Memory{files: map[string]*stored{}, locks: map[string]bool{}, room: -1}
}

// SetRoom limits how many more bytes the storage takes.
func (m *Memory) SetRoom(bytes int64) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.room = bytes
}

func (m *Memory) refuse(op, name string) error {
	if err := platform.CheckName(name); err != nil {
		return &fs.PathError{Op: op, Path: name, Err: err}
	}
	return m.faults.write
}

// Create implements platform.Files.
func (m *Memory) Create(name string) (platform.File, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if err := m.refuse("create", name); err != nil {
		return nil, err
	}
	if m.files[name] != nil {
		return nil, &fs.PathError{Op: "create", Path: name, Err: fs.ErrExist}
	}
	s := &stored{}
	m.files[name] = s
	return &memoryFile{m, s}, nil
}

// Open implements platform.Files.
func (m *Memory) Open(name string) (io.ReadCloser, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	s := m.files[name]
	if s == nil {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return io.NopCloser(bytes.NewReader(bytes.Clone(s.data))), nil
}

// Replace implements platform.Files.
func (m *Memory) Replace(name string, data []byte) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	if err := errors.Join(m.refuse("replace", name), m.faults.rename); err != nil {
		return err
	}
	if err := m.take(int64(len(data))); err != nil {
		return err
	}
	m.files[name] = &stored{data: bytes.Clone(data), synced: len(data)}
	return nil
}

func (m *Memory) take(n int64) error {
	if m.room < 0 {
		return nil
	}
	if n > m.room {
		return platform.ErrFull
	}
	m.room -= n
	return nil
}

// Remove implements platform.Files.
func (m *Memory) Remove(name string) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	s := m.files[name]
	if s == nil {
		return &fs.PathError{Op: "remove", Path: name, Err: fs.ErrNotExist}
	}
	if m.room >= 0 {
		m.room += int64(len(s.data))
	}
	delete(m.files, name)
	return nil
}

// List implements platform.Files.
func (m *Memory) List() ([]platform.Info, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	var infos []platform.Info
	for name, s := range m.files {
		infos = append(infos, platform.Info{Name: name, Size: int64(len(s.data)), Modified: time.Unix(0, 0)})
	}
	slices.SortFunc(infos, func(a, b platform.Info) int {
		return bytes.Compare([]byte(a.Name), []byte(b.Name))
	})
	return infos, nil
}

// Free implements platform.Files.
func (m *Memory) Free() (int64, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.room < 0 {
		return 0, platform.ErrUnknown
	}
	return m.room, nil
}

// Lock implements platform.Files.
func (m *Memory) Lock(name string) (func(), error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.locks[name] {
		return nil, platform.ErrBusy
	}
	m.locks[name] = true
	return sync.OnceFunc(func() {
		m.mu.Lock()
		defer m.mu.Unlock()
		delete(m.locks, name)
	}), nil
}
