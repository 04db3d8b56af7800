package shell

import (
	"time"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/view"
)

// now is the date and time of day where the rider is.
func (s *Shell) now() time.Time { return s.dev.Clock.Wall().In(s.cfg.Location) }

// airAge is when the air was entered, and whether it needs another look.
func (s *Shell) airAge() (since time.Time, old bool) {
	since, known := s.choices.AirSince()
	if known && !since.IsZero() {
		since = since.In(s.cfg.Location)
	}
	return since, known && store.AirIsOld(since, s.now())
}

// openAir asks for the air of the hour.
func (s *Shell) openAir() {
	s.push(func() *kit.Page {
		words := ""
		if since, old := s.airAge(); old {
			words = s.screen.C.AirOld(since)
		}
		return s.screen.Conditions(s.air(), s.station(), words, screens.ConditionsActions{Back: s.goBack,
			Still: func() {
				now := s.now()
				s.changed(func(c *store.Choices) {
					c.AirEntered = store.AirEntered{Temperature: now, Pressure: now, Humidity: now, Wind: now, Station: now}
				})
			},
			Empty: func() {
				s.changed(func(c *store.Choices) {
					c.Air, c.Wind, c.Station, c.AirEntered = store.Air{}, nil, store.Station{}, store.AirEntered{}
				})
			}})
	})
}

// airField is a field of today's air or wind; what is typed is kept once it is a
// number.
func (s *Shell) airField(name, hint string, q view.Quantity, into **float64, known *time.Time) kit.Field {
	c := s.screen.C
	return kit.Field{Name: name, Hint: hint, Text: c.Write(*into, q), Unit: q.Unit, Keys: keysFor(q), Changed: func(typed string) {
		if x, err := c.Read(typed, q); err == nil {
			*into, *known = x, s.now()
			s.keepChoices()
		}
	}}
}

// air is the fields of today's air.
func (s *Shell) air() []kit.Field {
	t, c, ch := s.screen.C.Book, s.screen.C, &s.choices
	return []kit.Field{
		s.airField(t.More.Temperature, "", c.TemperatureQuantity(), &ch.Air.Temperature, &ch.AirEntered.Temperature),
		s.airField(t.More.Pressure, "", c.PressureQuantity(), &ch.Air.Pressure, &ch.AirEntered.Pressure),
		s.airField(t.More.Humidity, "", view.Quantity{Unit: "%", SI: 1, High: 100}, &ch.Air.Humidity, &ch.AirEntered.Humidity),
		s.airField(t.Plan.Wind, t.Parts.WindHint, c.WindQuantity(), &ch.Wind, &ch.AirEntered.Wind),
	}
}

// station is the fields of the wind at a weather station.
func (s *Shell) station() []kit.Field {
	t, c, ch := s.screen.C.Book.Parts, s.screen.C, &s.choices
	return []kit.Field{
		s.airField(t.StationWind, "", c.StationQuantity(), &ch.Station.Speed, &ch.AirEntered.Station),
		s.airField(t.StationFrom, t.StationFromHint, c.CompassQuantity(), &ch.Station.From, &ch.AirEntered.Station),
	}
}
