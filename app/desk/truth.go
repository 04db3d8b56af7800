package main

import (
	"encoding/json"
	"io"

	"stillair/sensors/sim"
)

// truth is truth.json: what a perfect analysis would find.
type truth struct {
	Seed   uint64       `json:"seed"`
	Bike   string       `json:"bike"`
	LagS   float64      `json:"gnss_lag_s"`
	Setups []truthSetup `json:"setups"`
	Events []truthEvent `json:"deeds"`
}

type truthSetup struct {
	Name string  `json:"name"`
	CdA  float64 `json:"cda_m2"`
	Crr  float64 `json:"crr"`
	Mass float64 `json:"mass_kg"`
}

type truthEvent struct {
	Kind    string      `json:"kind"`
	Start   float64     `json:"start_s"`
	End     float64     `json:"end_s"`
	From    float64     `json:"from_mps"`
	To      float64     `json:"to_mps"`
	Setup   string      `json:"setup"`
	Spoilt  []string    `json:"spoilt,omitempty"`
	Marks   []truthMark `json:"marks,omitempty"`
	Rollout *float64    `json:"rollout_s,omitempty"` // when one foot was covered
}

type truthMark struct {
	Mark    string  `json:"mark"`
	Time    float64 `json:"s"`
	Rollout float64 `json:"rollout_s"`
}

func writeTruth(out io.Writer, sc sim.Scenario, seed uint64, ride *sim.Ride) error {
	t := truth{Seed: seed, Bike: sc.Bike.Name, LagS: ride.Truth.Lag, Setups: trueSetups(sc)}
	for _, d := range ride.Truth.Events {
		j := truthEvent{Kind: string(d.Kind), Start: d.Start, End: d.End, From: d.From, To: d.To, Setup: d.Setup, Spoilt: d.Spoilt}
		if d.Kind == sim.KindLaunch {
			j.Rollout = &d.Rollout
			for _, m := range ride.Truth.Marks(d) {
				j.Marks = append(j.Marks, truthMark{m.Name, m.Time, m.Rollout})
			}
		}
		t.Events = append(t.Events, j)
	}
	enc := json.NewEncoder(out)
	enc.SetIndent("", "  ")
	return enc.Encode(t)
}

// trueSetups are the setups that the plan puts on the bike, in order.
func trueSetups(sc sim.Scenario) []truthSetup {
	var out []truthSetup
	seen := map[string]bool{}
	add := func(s sim.Setup) {
		if seen[s.Name] {
			return
		}
		seen[s.Name] = true
		t := truthSetup{Name: s.Name, CdA: sc.Bike.CdA, Crr: sc.Bike.Crr, Mass: sc.Bike.Mass}
		for _, f := range []struct {
			to   *float64
			from float64
		}{{&t.CdA, s.CdA}, {&t.Crr, s.Crr}, {&t.Mass, s.Mass}} {
			if f.from != 0 {
				*f.to = f.from
			}
		}
		out = append(out, t)
	}
	for _, act := range sc.Plan {
		if c, ok := act.(sim.Change); ok {
			add(c.Setup)
		}
	}
	if len(out) == 0 {
		add(sim.Setup{})
	}
	return out
}
