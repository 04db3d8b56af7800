package main

import (
	"context"
	"strings"

	"github.com/spf13/pflag"

	"stillair/app/input"
	"stillair/export/results"
	"stillair/export/shown"
)

// analyseFlags are the flags of analyse.
type analyseFlags struct {
	json     bool
	report   string
	test     string
	tables   string
	rollOns  []string
	system   string
	language string
	given    *given
}

func analyseCommand() command {
	return command{
		Name: "analyse", Args: "RECORDING", Summary: "find the runs in a recording and measure them",
		Help: `
RECORDING is a session file of the phone app (.jsonl.gz), a plain log (a folder
or .zip with motion.csv, gnss.csv and optionally pressure.csv and ride.json),
JSON Lines that a browser wrote, or NMEA sentences.

The bike's mass matters: an error in it is the same error in drag area and
power. Weigh bike and rider, or add them up, and give --mass. Temperature and
pressure of the air come from a weather station nearby; note that most report
the pressure reduced to sea level. Values given here override those in the
recording.

Examples:
  desk analyse ride.jsonl.gz --report ride.html
  desk analyse ride.jsonl.gz --report fahrt.html --language de
  desk analyse my-log/ --mass 287 --temperature 18 --pressure 1009
  desk analyse ride.zip --rollon 60-100km/h --rollon 40-70mph --units both
  desk analyse ride.jsonl.gz --json | jq '.road_load[] | {setup, cda_m2}'`,
		Flags: func(f *pflag.FlagSet) runner {
			a := &analyseFlags{}
			f.BoolVar(&a.json, "json", false, "print the results as JSON and nothing else")
			f.StringVar(&a.report, "report", "", "write a page with plots to this file (HTML)")
			f.StringVar(&a.test, "protocol", "", "write the test protocol of the coast-downs to this file (JSON)")
			f.StringVar(&a.tables, "csv", "", "write tables (CSV) into this folder")
			f.StringArrayVar(&a.rollOns, "rollon", nil, "speeds of a roll-on, such as 60-100km/h or 40-70mph; may be repeated")
			f.StringVar(&a.system, "units", string(shown.Metric), "metric, imperial or both")
			f.StringVar(&a.language, "language", string(shown.English), "of the page: en or de")
			a.given = addGiven(f).withColumns(f)
			return a.run
		},
	}
}

func (a *analyseFlags) run(ctx context.Context, w *world, args []string) error {
	if len(args) != 1 {
		return usage("it takes one recording, not %d", len(args))
	}
	system, err := shown.ParseSystem(a.system)
	if err != nil {
		return usageError{err}
	}
	language, err := parseLanguage(a.language)
	if err != nil {
		return err
	}
	if len(a.rollOns) == 0 && system == shown.Imperial {
		a.rollOns = []string{"40-60mph", "50-75mph"}
	}
	pairs, err := speedPairs(a.rollOns)
	if err != nil {
		return err
	}
	var ride *input.Ride
	if err := w.during(ctx, "reading", func() (err error) { ride, err = a.given.open(args[0]); return err }); err != nil {
		return err
	}
	if err := a.given.apply(&ride.Log.Ride); err != nil {
		return err
	}
	s, err := w.analyse(ctx, ride, args[0], pairs)
	if err != nil {
		return err
	}
	written, err := a.write(s, shown.Style{System: system, Language: language})
	if err != nil {
		return err
	}
	if a.json {
		return results.Write(w.Out, s.document())
	}
	text := summary(s, system)
	if len(written) > 0 {
		text += "\nWritten\n  " + strings.Join(written, "\n  ") + "\n"
	}
	return w.print(text)
}

// write writes the files asked for and returns their paths.
func (a *analyseFlags) write(s *study, style shown.Style) ([]string, error) {
	var written []string
	if a.report != "" {
		if err := saveReport(a.report, s, style); err != nil {
			return nil, err
		}
		written = append(written, a.report)
	}
	if a.test != "" {
		t, err := testOf([]*study{s}, nil)
		if err == nil {
			err = saveProtocol(a.test, t)
		}
		if err != nil {
			return nil, err
		}
		written = append(written, a.test)
	}
	if a.tables != "" {
		paths, err := saveTables(a.tables, s.result)
		if err != nil {
			return nil, err
		}
		written = append(written, paths...)
	}
	return written, nil
}
