package shell

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/view"
	"stillair/sensors"
)

// editValues opens the values that the open ride is computed with. Saving them
// recomputes it; the recording keeps its own.
func (s *Shell) editValues() {
	v := store.Values{}
	if had := s.opened.ses.About.Values; had != nil {
		v = *had
	}
	s.push(s.valuesScreen(v))
}

// valuesScreen is the form of values, begun with v.
func (s *Shell) valuesScreen(v store.Values) showing {
	c, t := s.screen.C, s.screen.C.Book
	recorded := (&store.Values{Setups: v.Setups}).Apply(s.opened.recorded)
	f := newForm(c)
	f.numberWas("mass", t.Bikes.Mass, t.Bikes.MassHint, &v.Mass, c.MassQuantity(60, 1500), recorded.Mass)
	f.numberWas("sd", t.Bikes.MassSD, "", &v.MassSD, c.MassQuantity(0, 200), recorded.MassSD)
	f.numberWas("wheels", t.Bikes.Rotating, "", &v.RotatingMass, c.MassQuantity(0, 60), recorded.RotatingMass)
	f.numberWas("temperature", t.More.Temperature, "", &v.Air.Temperature, c.TemperatureQuantity(), recorded.Air.Temperature)
	f.numberWas("end", t.Parts.TemperatureEnd, t.Parts.TemperatureEndHint, &v.Air.TemperatureEnd, c.TemperatureQuantity(), recorded.Air.TemperatureEnd)
	f.numberWas("pressure", t.More.Pressure, "", &v.Air.Pressure, f.c.PressureQuantity(), recorded.Air.Pressure/100)
	f.numberWas("humidity", t.More.Humidity, "", &v.Air.Humidity, view.Quantity{Unit: "%", SI: 1, High: 100}, 100*recorded.Air.Humidity)
	f.numberWas("wind", t.Plan.Wind, t.Parts.WindHint, &v.WindSD, f.c.WindQuantity(), recorded.WindSD)
	f.numberWas("station", t.Parts.StationWind, "", &v.Station.Speed, c.StationQuantity(), recorded.Station.Speed)
	f.numberWas("from", t.Parts.StationFrom, t.Parts.StationFromHint, &v.Station.From, c.CompassQuantity(), recorded.Station.FromDeg)
	f.numberWas("limit", t.Parts.Limit, "", &v.LimitRPM, c.LimitQuantity(), recorded.LimitRPM)
	keys, masses := setupFields(f, recorded, v.SetupMass)
	gears := gearFields(f, recorded.Gears, v.Gears)
	save := func() {
		if !f.check() {
			s.again()
			return
		}
		v.SetupMass, v.Gears = masses.values(), gears.values()
		s.computeWith(v)
	}
	var reset func()
	if s.opened.ses.About.Values != nil {
		reset = func() { s.computeWith(store.Values{}) }
	}
	return func() *kit.Page {
		first := screens.FormGroup{Hint: t.Parts.ValuesHint, Fields: f.fields(append([]string{"mass", "sd", "wheels"}, keys...)...)}
		groups := []screens.FormGroup{first, s.fromBike(f, &v, recorded), s.gearValues(f, gears),
			{Title: t.More.AirTitle, Fields: f.fields("temperature", "end", "pressure", "humidity", "wind")},
			{Title: t.Parts.StationTitle, Hint: t.Parts.StationHint, Fields: f.fields("station", "from")}}
		return s.screen.Form(t.Parts.ValuesTitle, groups, f.trouble, s.goBack, save, reset, t.Parts.Recorded, t.Parts.RecordedHint)
	}
}

// fromBike offers to take the bike of the ride as it is described now.
func (s *Shell) fromBike(f *form, v *store.Values, recorded sensors.Ride) screens.FormGroup {
	t := s.screen.C.Book.Parts
	for _, b := range s.garage {
		if b.Name != s.opened.ses.About.Bike {
			continue
		}
		return screens.FormGroup{Hint: t.FromBikeHint, Add: fmt.Sprintf(t.FromBike, b.Name), OnAdd: func() {
			f.check() // valid entries are kept
			now := store.OfBike(b, recorded)
			now.Air, now.WindSD, now.Station, now.Setups = v.Air, v.WindSD, v.Station, v.Setups
			s.replace(s.valuesScreen(now))
		}}
	}
	return screens.FormGroup{}
}

// byName holds what fields of a form take, by the name of what they are about.
type byName map[string]**float64

// values are those that were typed in; nil where none was.
func (b byName) values() map[string]*float64 {
	var out map[string]*float64
	for name, p := range b {
		if *p == nil {
			continue
		}
		if out == nil {
			out = map[string]*float64{}
		}
		out[name] = *p
	}
	return out
}

// field makes the place of a name, begun with what it had.
func (b byName) field(name string, had map[string]*float64) **float64 {
	p := had[name]
	b[name] = &p
	return &p
}

// setupFields are the fields of the setups of a ride that had a mass of their
// own.
func setupFields(f *form, recorded sensors.Ride, had map[string]*float64) (keys []string, masses byName) {
	masses = byName{}
	for _, x := range recorded.Setups {
		if masses[x.Name] != nil || !(x.Mass > 0) {
			continue
		}
		key := "setup " + x.Name
		f.numberWas(key, f.c.SetupMassName(x.Name), "", masses.field(x.Name, had), f.c.MassQuantity(60, 1500), x.Mass)
		keys = append(keys, key)
	}
	return keys, masses
}

// gearFields are the fields of the recorded gears, and of those that were added
// after the ride.
func gearFields(f *form, recorded []sensors.Gear, had map[string]*float64) byName {
	gears := byName{}
	for _, g := range recorded {
		gearField(f, gears, g.Name, had, g.RPMPerMPS)
	}
	for _, name := range slices.Sorted(maps.Keys(had)) {
		if gears[name] == nil && had[name] != nil {
			gearField(f, gears, name, had, math.NaN())
		}
	}
	return gears
}

func gearField(f *form, gears byName, name string, had map[string]*float64, was float64) {
	q := f.c.GearQuantity()
	q.Unit = f.c.GearLabel()
	f.numberWas("gear "+name, f.c.GearNamed(name), "", gears.field(name, had), q, was)
}

// gearValues are the gears, to which more can be added by their numbers.
func (s *Shell) gearValues(f *form, gears byName) screens.FormGroup {
	t := s.screen.C.Book
	g := screens.FormGroup{Title: t.Bikes.Gears, Hint: t.Bikes.GearsHint}
	for _, name := range slices.Sorted(maps.Keys(gears)) {
		g.Fields = append(g.Fields, f.fields("gear "+name)...)
	}
	g.Fields = append(g.Fields, f.fields("limit")...)
	if next := len(gears) + 1; next <= mostGears && gears[strconv.Itoa(next)] == nil {
		g.Add, g.OnAdd = t.Bikes.AddGear, func() {
			gearField(f, gears, strconv.Itoa(next), nil, math.NaN())
			s.again()
		}
	}
	return g
}

// computeWith keeps values beside the open ride and measures it again.
func (s *Shell) computeWith(v store.Values) {
	var keep *store.Values
	if !v.Empty() {
		keep = &v
	}
	id := s.opened.id
	s.change(func(l library) error {
		return l.sessions.Update(id, func(a *store.About) { a.Values = keep })
	}, func(error) {
		s.home(s.place)
		s.openRide(id)
	})
}
