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

// airAge is when the air was told, and whether it needs another look.
func (s *Shell) airAge() (since time.Time, old bool) {
	since, told := s.choices.AirSince()
	if told && !since.IsZero() {
		since = since.In(s.cfg.Location)
	}
	return since, told && store.AirIsOld(since, s.now())
}

// openAir asks for the air of the hour.
func (s *Shell) openAir() {
	s.push(func() *kit.Page {
		words := ""
		if since, old := s.airAge(); old {
			words = s.screen.C.AirOld(since)
		}
		return s.screen.Conditions(s.air(), words, screens.ConditionsActions{Back: s.goBack,
			Still: func() {
				now := s.now()
				s.changed(func(c *store.Choices) {
					c.AirTold = store.AirTold{Temperature: now, Pressure: now, Humidity: now, Wind: now}
				})
			},
			Empty: func() {
				s.changed(func(c *store.Choices) { c.Air, c.Wind, c.AirTold = store.Air{}, nil, store.AirTold{} })
			}})
	})
}

// air is the fields of today's air; each is kept as it is typed, once it is a
// number.
func (s *Shell) air() []kit.Field {
	t, c, now, ch := s.screen.C.Book, s.screen.C, s.choices, &s.choices
	field := func(name, hint string, p *float64, q view.Quantity, into **float64, told *time.Time) kit.Field {
		return kit.Field{Name: name, Hint: hint, Text: c.Write(p, q), Unit: q.Unit, Keys: keysFor(q), Changed: func(typed string) {
			if x, err := c.Read(typed, q); err == nil {
				*into, *told = x, s.now()
				s.keepChoices()
			}
		}}
	}
	pressure := c.PressureQuantity()
	wind := c.WindQuantity()
	return []kit.Field{
		field(t.More.Temperature, "", now.Air.Temperature, c.TemperatureQuantity(), &ch.Air.Temperature, &ch.AirTold.Temperature),
		field(t.More.Pressure, "", now.Air.Pressure, pressure, &ch.Air.Pressure, &ch.AirTold.Pressure),
		field(t.More.Humidity, "", now.Air.Humidity, view.Quantity{Unit: "%", SI: 1, High: 100}, &ch.Air.Humidity, &ch.AirTold.Humidity),
		field(t.Plan.Wind, t.Parts.WindHint, now.Wind, wind, &ch.Wind, &ch.AirTold.Wind),
	}
}
