package main

import (
	"context"
	"io"
	"os"
	"runtime"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"stillair/export/share"
	"stillair/export/shown"
	"stillair/runs/marks"
	"stillair/sensors/units"
)

// exportFlags are the flags of export.
type exportFlags struct {
	into, places, ends, system, language, date string
	as, rollOns                                []string
	sound                                      bool
	atOnce                                     int
	given                                      *given
}

func exportCommand() command {
	return command{
		Name: "export", Args: "RECORDING...", Summary: "write recordings as files that other programs read",
		Help: `
Takes any number of recordings of any kind that analyse reads, or folders of
such recordings, and writes each in every format asked for:

` + formatLines() + `
Parquet and CSV hold runs, marks, road loads, comparisons and power beside the
track, each Parquet file with the ride's name, so that an engine reads
thousands at once:

  desk export rides/ --as parquet --into all
  select setup, avg(cda_m2) from 'all/road-load/*.parquet' group by setup

What you export may travel further than you think. By default the first and the
last 200 m are cut off, and every place near them is removed: they show where
you live. --places moved keeps the shape of the ride and hides where on Earth it
was; --places without removes every position. Times and distances then begin at
zero, so that they do not reveal how far away home is; --date day leaves out the
time of day, --date none the date too. Sound recorded for the engine speed is
left out unless --sound is given: it may contain voices.
Results are not affected: they are computed before anything is removed.

A recording that cannot be used is reported, and the others are still exported.`,
		Flags: func(f *pflag.FlagSet) runner {
			e := &exportFlags{}
			f.StringSliceVar(&e.as, "as", []string{"gpx"}, "formats, separated by commas")
			f.StringVar(&e.into, "into", "exported", "folder to write into")
			f.StringVar(&e.places, "places", string(share.Kept), "kept, moved or without")
			f.StringVar(&e.ends, "ends", "200m", "how much to cut off at the beginning and the end; 0 for nothing")
			f.StringVar(&e.date, "date", string(share.Dated), "how much of date and time to keep: exact, day (no time of day) or none")
			f.BoolVar(&e.sound, "sound", false, "keep recorded sound, in which voices may be heard")
			f.IntVar(&e.atOnce, "at-once", runtime.GOMAXPROCS(0), "how many recordings to process at a time")
			f.StringArrayVar(&e.rollOns, "rollon", nil, "speeds of a roll-on, such as 60-100km/h or 40-70mph; may be repeated")
			f.StringVar(&e.system, "units", string(shown.Metric), "of the report: metric, imperial or both")
			f.StringVar(&e.language, "language", string(shown.English), "of the report: en or de")
			e.given = addGiven(f).withColumns(f)
			return e.run
		},
	}
}

func (e *exportFlags) run(ctx context.Context, w *world, args []string) error {
	if len(args) == 0 {
		return usage("it takes at least one recording")
	}
	o, err := e.order()
	if err != nil {
		return err
	}
	inputs, err := exportInputs(args, o.choice)
	if err != nil {
		return err
	}
	o.random = w.Random
	return o.all(ctx, w, inputs, e.atOnce)
}

// order checks the flags.
func (e *exportFlags) order() (*order, error) {
	o := &order{into: e.into, given: e.given}
	var err error
	if o.choice, err = e.choice(); err != nil {
		return nil, err
	}
	for _, name := range e.as {
		f, ok := formatNamed(strings.TrimSpace(name))
		if !ok {
			return nil, usage("there is no format %q; the formats are\n%s", name, formatLines())
		}
		if f.places && o.choice.Places == share.Without {
			return nil, usage("%s consists of places only: it cannot be combined with --places without", f.name)
		}
		o.formats = append(o.formats, f)
	}
	if o.style.System, err = shown.ParseSystem(e.system); err != nil {
		return nil, usageError{err}
	}
	if o.style.Language, err = parseLanguage(e.language); err != nil {
		return nil, err
	}
	if o.rollOns, err = speedPairs(e.rollOns); err != nil {
		return nil, err
	}
	if e.atOnce < 1 {
		return nil, usage("--at-once %d is not possible; it must be at least 1", e.atOnce)
	}
	return o, nil
}

func (e *exportFlags) choice() (share.Choice, error) {
	c := share.Choice{Places: share.Places(e.places), Date: share.Date(e.date), Sound: e.sound}
	switch c.Places {
	case share.Kept, share.Moved, share.Without:
	default:
		return c, usage("--places %s is not possible; it is kept, moved or without", e.places)
	}
	switch c.Date {
	case share.Dated, share.Day, share.Undated:
	default:
		return c, usage("--date %s is not possible; it is exact, day or none", e.date)
	}
	var ok bool
	if c.EndsCut, ok = parseLength(e.ends); !ok {
		return c, usage("--ends %s is not possible; it is a length such as 200m, 0.5km, 650ft or 0", e.ends)
	}
	return c, nil
}

// parseLength reads a length, in metres where no unit follows.
func parseLength(text string) (metres float64, ok bool) {
	factor := 1.0
	for _, u := range []struct {
		unit   string
		metres float64
	}{{"km", 1000}, {"ft", units.Foot}, {"m", 1}} {
		if number, found := strings.CutSuffix(text, u.unit); found {
			text, factor = number, u.metres
			break
		}
	}
	x, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	const longest = 1e6 // m
	return x * factor, err == nil && x >= 0 && x*factor <= longest
}

// order is what is to be done with each recording.
type order struct {
	into    string
	formats []format
	choice  share.Choice
	style   shown.Style // of the report
	rollOns []marks.SpeedPair
	given   *given
	random  io.Reader // for the IDs of what is written

	originals []os.FileInfo // the recordings, never to be replaced
}
