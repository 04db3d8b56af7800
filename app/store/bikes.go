package store

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"stillair/app/platform"
)

const (
	bikePrefix = "bike-"
	bikeEnding = ".json"
)

// Bikes is the list of bikes.
type Bikes struct {
	files platform.Files
	clock platform.Clock
}

// NewBikes keeps bikes in files.
func NewBikes(files platform.Files, clock platform.Clock) *Bikes {
	return &Bikes{files: files, clock: clock}
}

// List gives all bikes in order of name. Problems name the files that could
// not be used; they are left as they are.
func (b *Bikes) List() (bikes []Bike, problems []error) {
	infos, err := b.files.List()
	if err != nil {
		return nil, []error{err}
	}
	for _, info := range infos {
		if !strings.HasPrefix(info.Name, bikePrefix) || !strings.HasSuffix(info.Name, bikeEnding) {
			continue
		}
		var bike Bike
		if err := readJSON(b.files, info.Name, &bike); err != nil {
			problems = append(problems, err)
			continue
		}
		bikes = append(bikes, bike)
	}
	slices.SortStableFunc(bikes, func(a, b Bike) int { return strings.Compare(a.Name, b.Name) })
	return bikes, problems
}

// Put keeps a bike, a new one where its ID is empty, and returns it as kept.
func (b *Bikes) Put(bike Bike) (Bike, error) {
	if field, err := bike.Check(); err != nil {
		return bike, fmt.Errorf("%s: %w", field, err)
	}
	bike.Version = Version
	if bike.ID == "" {
		id, err := b.freeID()
		if err != nil {
			return bike, err
		}
		bike.ID = id
	}
	return bike, writeJSON(b.files, bikePrefix+bike.ID+bikeEnding, bike)
}

func (b *Bikes) freeID() (string, error) {
	stem := b.clock.Wall().UTC().Format("20060102-150405")
	for n := 1; n < 1000; n++ {
		id := stem
		if n > 1 {
			id = fmt.Sprintf("%s-%d", stem, n)
		}
		r, err := b.files.Open(bikePrefix + id + bikeEnding)
		if errors.Is(err, fs.ErrNotExist) {
			return id, nil
		}
		if err != nil {
			return "", err
		}
		if err := r.Close(); err != nil {
			return "", err
		}
	}
	return "", fmt.Errorf("%w: no free name for a new bike", fs.ErrExist)
}

// Remove forgets a bike. Sessions ridden with it keep what they recorded.
func (b *Bikes) Remove(id string) error { return b.files.Remove(bikePrefix + id + bikeEnding) }
