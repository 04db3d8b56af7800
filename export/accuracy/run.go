package accuracy

import (
	"context"
	"fmt"
	"sync"
)

// Plan lists the seeds still to be simulated.
type Plan struct {
	jobs  []job
	Total int // seeds of all cases, including existing ones
}

type job struct {
	study, name string
	seed        uint64
	ride        func(uint64) (Record, error)
}

// key identifies one seed of one case.
type key struct {
	study, name string
	seed        uint64
}

// NewPlan lists what is missing among the records. Every case gets its first
// seeds before any gets its last, so that a measurement that is stopped early
// has results for each.
func NewPlan(studies []Study, have []Record) Plan {
	done := map[key]bool{}
	for _, r := range have {
		done[key{r.Study, r.Case, r.Seed}] = true
	}
	var p Plan
	most := 0
	for _, s := range studies {
		for _, c := range s.Cases {
			most = max(most, c.Seeds)
			p.Total += c.Seeds
		}
	}
	for part := range parts(most) {
		for _, s := range studies {
			for _, c := range s.Cases {
				from, to := c.Seeds*part/parts(most), c.Seeds*(part+1)/parts(most)
				for seed := uint64(from + 1); seed <= uint64(to); seed++ {
					if !done[key{s.Name, c.Name, seed}] {
						p.jobs = append(p.jobs, job{s.Name, c.Name, seed, c.Ride})
					}
				}
			}
		}
	}
	return p
}

// parts is into how many rounds over all cases a measurement is cut.
func parts(most int) int { return max(1, min(most, 50)) }

// Left is the number of seeds still to be simulated.
func (p Plan) Left() int { return len(p.jobs) }

// Run simulates the remaining seeds on so many workers and passes on every
// record as it comes, from one goroutine at a time. It ends early when the
// context does, or when keep fails.
func (p Plan) Run(ctx context.Context, workers int, version string, keep func(Record) error) error {
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	jobs := make(chan job)
	var group sync.WaitGroup
	var lock sync.Mutex
	for range max(1, workers) {
		group.Go(func() {
			for j := range jobs {
				r := j.do(version)
				lock.Lock()
				if err := keep(r); err != nil {
					stop(err)
				}
				lock.Unlock()
			}
		})
	}
feed:
	for _, j := range p.jobs {
		select {
		case jobs <- j:
		case <-ctx.Done():
			break feed
		}
	}
	close(jobs)
	group.Wait()
	return context.Cause(ctx)
}

// do simulates one seed. An error is part of the record: a failing case must
// appear in the report, and not stop the others.
func (j job) do(version string) (r Record) {
	defer func() {
		if p := recover(); p != nil {
			r = Record{Failed: fmt.Sprint("it crashed: ", p)}
		}
		r.Version, r.Study, r.Case, r.Seed = version, j.study, j.name, j.seed
	}()
	r, err := j.ride(j.seed)
	if err != nil {
		return Record{Failed: err.Error()}
	}
	return r
}
