package shell

import (
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/view"
	"stillair/sensors"
)

// editValues opens the values that the open ride is computed with. Saving them
// computes it anew; the recording keeps its own.
func (s *Shell) editValues() {
	c, t := s.screen.C, s.screen.C.Book
	v := store.Values{SetupMass: map[string]*float64{}}
	if had := s.opened.ses.About.Values; had != nil {
		v = *had
		v.SetupMass = map[string]*float64{}
		for name, m := range had.SetupMass {
			v.SetupMass[name] = m
		}
	}
	f := newForm(c)
	f.number("mass", t.Bikes.Mass, t.Bikes.MassHint, &v.Mass, c.MassQuantity(60, 1500))
	f.number("sd", t.Bikes.MassSD, "", &v.MassSD, c.MassQuantity(0, 200))
	f.number("wheels", t.Bikes.Rotating, "", &v.RotatingMass, c.MassQuantity(0, 60))
	f.number("temperature", t.More.Temperature, "", &v.Air.Temperature, c.TemperatureQuantity())
	f.number("pressure", t.More.Pressure, "", &v.Air.Pressure, view.Quantity{Unit: "hPa", SI: 1, Low: 500, High: 1100, Decimals: 1})
	f.number("humidity", t.More.Humidity, "", &v.Air.Humidity, view.Quantity{Unit: "%", SI: 1, High: 100})
	f.number("wind", t.Plan.Wind, t.Parts.WindHint, &v.WindSD, view.Quantity{Unit: "m/s", SI: 1, Low: 0.1, High: 10, Decimals: 1})
	keys, masses := setupFields(f, s.opened.told, v.SetupMass)
	save := func() {
		if !f.check() {
			s.again()
			return
		}
		for name, m := range masses {
			v.SetupMass[name] = *m
		}
		s.computeWith(v)
	}
	var reset func()
	if s.opened.ses.About.Values != nil {
		reset = func() { s.computeWith(store.Values{}) }
	}
	s.push(func() *kit.Page {
		groups := []screens.FormGroup{{Hint: t.Parts.ValuesHint, Fields: f.fields(append([]string{"mass", "sd", "wheels"}, keys...)...)},
			{Title: t.More.AirTitle, Fields: f.fields("temperature", "pressure", "humidity", "wind")}}
		return s.screen.Form(t.Parts.ValuesTitle, groups, f.trouble, s.goBack, save, reset, t.Parts.Recorded, t.Parts.RecordedHint)
	})
}

// setupFields are the fields of the setups of a ride that had a mass of their
// own.
func setupFields(f *form, told sensors.Ride, had map[string]*float64) (keys []string, masses map[string]**float64) {
	masses = map[string]**float64{}
	for _, x := range told.Setups {
		if masses[x.Name] != nil || !(x.Mass > 0) {
			continue
		}
		m := had[x.Name]
		masses[x.Name] = &m
		key := "setup " + x.Name
		f.number(key, f.c.SetupMassName(x.Name), "", &m, f.c.MassQuantity(60, 1500))
		keys = append(keys, key)
	}
	return keys, masses
}

// computeWith keeps values beside the open ride and has it measured anew.
func (s *Shell) computeWith(v store.Values) {
	var keep *store.Values
	if !v.Empty() {
		keep = &v
	}
	id := s.opened.id
	var err error
	s.aside(func() {
		err = s.sessions.Update(id, func(a *store.About) { a.Values = keep })
		s.reread()
	}, func() {
		if err != nil {
			s.problems = append(s.problems, err)
		}
		s.piles[s.place] = s.piles[s.place][:1]
		s.openRide(id)
	})
}
