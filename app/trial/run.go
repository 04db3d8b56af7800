package trial

import (
	"bytes"
	"context"
	"errors"
	"io"
	"slices"
	"time"

	"stillair/app/platform"
	"stillair/export/words"
)

// How long each part takes.
const (
	lieFor   = 12 * time.Second
	darkFor  = 30 * time.Second // then the phone buzzes
	patience = 2 * time.Minute  // until the screen was off for that long and is on again
	look     = 500 * time.Millisecond
)

// Run tests the phone and instructs the rider. It may be stopped with the
// context; what was found until then is in the result. Nothing else may use the
// sensors meanwhile. n is what the phone shows while the service runs.
func Run(ctx context.Context, d *platform.Device, n platform.Notification, tell func(Phase)) Result {
	r := Result{Kind: ResultKind, At: d.Clock.Wall().UTC(), Lines: []Line{storage(d)}}
	tell(LieStill)
	end := d.Clock.Elapsed() + lieFor
	h := listen(ctx, d, look, func() bool { return d.Clock.Elapsed() >= end })
	r.Lines = append(r.Lines, lying(h)...)
	if d.Background == nil || ctx.Err() != nil {
		return r
	}
	service := begin(d, n)
	r.Lines = append(r.Lines, service)
	if service.Verdict == Fails {
		return r
	}
	if d.Lit != nil {
		tell(SwitchOff)
		r.Lines = append(r.Lines, darkness(ctx, d, len(h.Log().Fixes) > 1))
	}
	if err := d.Background.End(); err != nil {
		l := &r.Lines[slices.IndexFunc(r.Lines, func(l Line) bool { return l.Topic == Service })]
		l.Verdict, l.Said = Differs, words.ForMachines().Error(err)
	}
	return r
}

// begin starts the service.
func begin(d *platform.Device, n platform.Notification) Line {
	from := d.Clock.Elapsed()
	if err := d.Background.Begin(n, false); err != nil {
		return Line{Topic: Service, Verdict: Fails, Said: words.ForMachines().Error(err)}
	}
	return Line{Topic: Service, Verdict: Works, Numbers: map[string]float64{Seconds: (d.Clock.Elapsed() - from).Seconds()}}
}

// darkness listens while the screen is off.
func darkness(ctx context.Context, d *platform.Device, had bool) Line {
	from, before := d.Clock.Elapsed(), d.Clock.Elapsed()
	var dark time.Duration
	buzzed := false
	h := listen(ctx, d, look, func() bool {
		now, lit := d.Clock.Elapsed(), d.Lit()
		if !lit {
			dark += now - before
		}
		before = now
		if dark >= darkFor && !buzzed {
			buzzed = true
			if d.Buzzer != nil {
				_ = d.Buzzer.Buzz(time.Second) // without it the rider looks at a clock
			}
		}
		return dark >= darkFor && lit || now-from > patience
	})
	return inTheDark(h, dark.Seconds(), had)
}

// trialFile is written and removed again.
const trialFile = "trial.tmp"

// storage writes as a recording does: some kilobytes, then on the disk.
func storage(d *platform.Device) Line {
	from := d.Clock.Elapsed()
	if err := writeAndRead(d.Files, bytes.Repeat([]byte("Stillair"), 8192)); err != nil {
		return Line{Topic: Storage, Verdict: Fails, Said: words.ForMachines().Error(err)}
	}
	took := (d.Clock.Elapsed() - from).Seconds()
	l := Line{Topic: Storage, Verdict: Works, Numbers: map[string]float64{Seconds: took}}
	if free, err := d.Files.Free(); err == nil {
		l.Numbers[Megabytes] = float64(free) / 1e6
	}
	if took > 1 { // a recorder syncs twice a second
		l.Verdict = Differs
	}
	return l
}

func writeAndRead(files platform.Files, data []byte) (err error) {
	_ = files.Remove(trialFile) // left over from an earlier trial
	f, err := files.Create(trialFile)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, files.Remove(trialFile)) }()
	_, err = f.Write(data)
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		return err
	}
	r, err := files.Open(trialFile)
	if err != nil {
		return err
	}
	back, err := io.ReadAll(r)
	if err = errors.Join(err, r.Close()); err == nil && !bytes.Equal(back, data) {
		err = errors.New("what was read is not what was written")
	}
	return err
}
