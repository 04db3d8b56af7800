package screens_test

import (
	"fmt"
	"io"
	"math"
	"slices"
	"time"

	"fyne.io/fyne/v2"

	"stillair/app/screens"
	"stillair/app/store"
	"stillair/app/view"
	"stillair/export/results"
	"stillair/runs"
	"stillair/runs/effect"
	"stillair/runs/season"
)

// seasonRides are an invented season: some days of one bike, each with its parts
// and its drag area.
func seasonRides() (rides []season.Ride, kept []store.Session) {
	days := []struct {
		day    int
		setups []string
		cda    []float64
	}{
		{2, []string{"short screen", "short screen + panniers"}, []float64{0.548, 0.607}},
		{9, []string{"short screen", "tall screen"}, []float64{0.556, 0.597}},
		{17, []string{"short screen", "tall screen + panniers"}, []float64{0.551, 0.652}},
		{30, []string{"short screen", "short screen + hand guards"}, []float64{0.545, 0.553}},
	}
	for i, d := range days {
		began := time.Date(2026, 9, 24, 14, 5, 0, 0, time.UTC).AddDate(0, 0, d.day)
		r := season.Ride{Name: fmt.Sprint("ride-", i), Started: began, Bike: "blue naked 700", Density: 1.19 - 0.01*float64(i)}
		for k, setup := range d.setups {
			r.Loads = append(r.Loads, season.Load{Setup: setup, CdA: val(d.cda[k], 0.026), Crr: val(0.0181+0.0002*float64(i), 0.0011), Noise: 0.005, Day: 0.006, CrrNoise: 0.0005})
		}
		for k, s := range []float64{4.31, 4.42} {
			r.Times = append(r.Times,
				season.Time{Mark: "0-100 km/h", Kind: string(runs.Launch), Setup: d.setups[0], Run: 3 + k, Start: 400 * float64(k), Bearing: 84 + 180*float64(k), Rollout: true, Time: val(s+0.03*float64(i), 0.04)},
				season.Time{Mark: "0-60 mph", Kind: string(runs.Launch), Setup: d.setups[0], Run: 3 + k, Start: 400 * float64(k), Bearing: 84 + 180*float64(k), Rollout: true, Time: val(s-0.18+0.03*float64(i), 0.04)},
				season.Time{Mark: "80-120 km/h", Kind: string(runs.RollOn), Setup: d.setups[0], Gear: "4", Run: 8 + k, Start: 900 + 300*float64(k), Bearing: math.NaN(), Time: val(3.61+0.02*float64(k), 0.026)})
		}
		if i%2 == 1 {
			v := 52.3 - 0.2*float64(i)
			r.Passes = []season.Pass{{Setup: d.setups[0], Over: "1 km", Distance: 1000, Apart: 190, There: val(v+1.1, 0.03), Back: val(v-1.1, 0.03), Mean: val(v, 0.021), Half: val(1.1, 0.021)},
				{Setup: d.setups[0], Over: "1/4 mile", Distance: 402, Apart: 190, There: val(v+1.2, 0.03), Back: val(v-1.1, 0.03), Mean: val(v+0.05, 0.021), Half: val(1.15, 0.021)}}
		}
		rides = append(rides, r)
		ses := inventedSession()
		ses.ID, ses.About.Started = r.Name, began.Local()
		if ses.About.Name = ""; i == 2 {
			ses.About.Name = "Closed road, both"
		}
		kept = append(kept, ses)
	}
	return rides, kept
}

func seasonLoad(cda float64) effect.Load {
	return effect.Load{CdA: val(cda, 0.026), Crr: val(0.018, 0.0011), K: 0.004, Mass: 290, Density: 1.19, Gravity: 9.81}
}

func seasonScreens() []picture {
	rides, kept := seasonRides()
	on := screens.SeasonActions{Back: nothing, Bike: func(int) {}, Open: func(string) {}}
	page := func(s screens.Screens, ask view.SeasonAsk) fyne.CanvasObject {
		ask.Rides = kept
		return tabs(s, screens.PlaceResults, s.Season(s.C.Season(ask), on))
	}
	other := season.Ride{Name: "other", Bike: "old tourer", Loads: []season.Load{{Setup: "", CdA: val(0.71, 0.03), Crr: val(0.02, 0.001), Noise: 0.01}}}
	return []picture{
		{"season", func(s screens.Screens) fyne.CanvasObject {
			return page(s, view.SeasonAsk{Season: results.NewSeason(append(rides, other), "", time.Hour),
				Garage: []store.Bike{{Name: "blue naked 700", Battery: ptr(12.5)}}, Loads: []view.SetupLoad{
					{Bike: "blue naked 700", Setup: "short screen", Load: seasonLoad(0.55)}, {Bike: "blue naked 700", Setup: "tall screen + panniers", Load: seasonLoad(0.65)}},
				Left: []view.Left{{Ride: kept[1], Why: io.ErrUnexpectedEOF}}})
		}},
		{"season one setup", func(s screens.Screens) fyne.CanvasObject {
			one := slices.Clone(rides[:3])
			for i := range one {
				one[i].Loads, one[i].Times = one[i].Loads[:1], nil
			}
			return page(s, view.SeasonAsk{Season: results.NewSeason(one, "", time.Hour)})
		}},
		{"season empty", func(s screens.Screens) fyne.CanvasObject {
			return page(s, view.SeasonAsk{Season: results.NewSeason(nil, "", time.Hour)})
		}},
	}
}
