package shell

import (
	"slices"
	"strconv"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/sensors"
)

func (s *Shell) bikesList() *kit.Page {
	return s.screen.Bikes(s.screen.C.Bikes(s.garage, s.chosenBike(), s.choices.Setup), s.words(s.problems), screens.BikesActions{
		New:       func() { s.editBike(store.Bike{}) },
		Edit:      func(id string) { s.withBike(id, s.editBike) },
		Choose:    s.choose,
		AddSetup:  func(id string) { s.withBike(id, func(b store.Bike) { s.editSetup(b, -1) }) },
		EditSetup: s.editSetupNamed,
	})
}

func (s *Shell) chosenBike() string {
	if b := s.bike(); b != nil {
		return b.ID
	}
	return ""
}

func (s *Shell) withBike(id string, do func(store.Bike)) {
	for _, b := range s.garage {
		if b.ID == id {
			do(b)
			return
		}
	}
}

func (s *Shell) choose(id, setup string) {
	s.choices.Bike, s.choices.Setup = id, setup
	s.keepChoices()
	s.again()
}

func (s *Shell) keepChoices() {
	c, l := s.choices, s.library
	aside(s, func() error { return store.WriteChoices(l.files, c) }, s.problem)
}

// keepBike keeps a bike and goes back to the list; what cannot be kept stays
// in the form.
func (s *Shell) keepBike(b store.Bike, failed func(error)) {
	b.Gears, b.Setups = slices.Clone(b.Gears), slices.Clone(b.Setups) // the form continues with its own
	type put struct {
		bike  store.Bike
		lists lists
		err   error
	}
	l := s.library
	aside(s, func() put {
		kept, err := l.bikes.Put(b)
		return put{kept, l.read(), err}
	}, func(p put) {
		if p.err != nil {
			failed(p.err)
			return
		}
		s.lists = p.lists
		if s.choices.Bike == "" || len(s.garage) == 1 {
			s.choices.Bike = p.bike.ID
			s.keepChoices()
		}
		s.back()
	})
}

// editBike opens the form of a bike, a new one where it has no ID.
func (s *Shell) editBike(b store.Bike) {
	c, t := s.screen.C, s.screen.C.Book.Bikes
	f := newForm(c)
	b.Gears = slices.Clone(b.Gears)
	f.text("name", t.Name, t.NameHint, "", &b.Name)
	f.number("mass", t.Mass, t.MassHint, &b.Mass, c.MassQuantity(60, 1500))
	f.number("sd", t.MassSD, t.MassSDHint, &b.MassSD, c.MassQuantity(0, 200))
	f.text("weighed", t.Weighed, t.WeighedHint, "", &b.Weighed)
	f.number("wheels", t.Rotating, t.RotatingHint, &b.RotatingMass, c.MassQuantity(0, 60))
	f.text("note", t.Note, "", "", &b.Note)
	more := partsOf(b)
	gears := make([]*float64, len(b.Gears), 12)
	for i := range b.Gears {
		gears[i] = &b.Gears[i].RPMPerMPS
	}
	save := func() {
		if !f.check() || !more.whole(f) {
			s.again()
			return
		}
		more.keep(&b)
		b.Gears = b.Gears[:0]
		for i, g := range gears {
			if g != nil {
				b.Gears = append(b.Gears, store.Gear{Name: strconv.Itoa(i + 1), RPMPerMPS: *g})
			}
		}
		s.keepBike(b, func(err error) { f.trouble = s.screen.C.Error(err); s.again() })
	}
	var remove func()
	if b.ID != "" {
		remove = func() { s.removeBike(b.ID) }
	}
	s.push(func() *kit.Page {
		groups := []screens.FormGroup{{Fields: f.fields("name", "mass"), Asks: []screens.Question{s.askDrive(&b)}}, {Title: t.Optional, Fields: f.fields("sd", "weighed", "wheels", "note")},
			s.gearGroup(f, &gears)}
		groups = append(groups, more.groups(f)...)
		return s.screen.Form(t.Edit, groups, f.trouble, s.goBack, save, remove, t.Remove, t.RemoveHint)
	})
}

// askDrive asks what holds engine and wheel together. What was not entered stands on
// the first, which is what most motorcycles have.
func (s *Shell) askDrive(b *store.Bike) screens.Question {
	t, all := s.screen.C.Book.Drive, sensors.Drives()
	return screens.Question{Name: t.Name, Hint: t.Hint, Choice: screens.Choice{Options: t.Kinds[:],
		Chosen: max(0, slices.Index(all, sensors.Drive(b.Drive))),
		Pick: func(i int) {
			b.Drive = string(all[i])
			s.again()
		}}}
}

// mostGears is as many as any motorcycle has.
const mostGears = 8

func (s *Shell) gearGroup(f *form, gears *[]*float64) screens.FormGroup {
	c, t := s.screen.C, s.screen.C.Book.Bikes
	g := screens.FormGroup{Title: t.Gears, Hint: t.GearsHint}
	q := c.GearQuantity()
	q.Unit = c.GearLabel()
	for i := range *gears {
		key := "gear" + strconv.Itoa(i)
		f.number(key, c.GearName(i+1), "", &(*gears)[i], q)
		g.Fields = append(g.Fields, f.fields(key)...)
	}
	if len(*gears) < mostGears {
		g.Add, g.OnAdd = t.AddGear, func() {
			*gears = append(*gears, nil)
			s.again()
		}
	}
	return g
}

func (s *Shell) removeBike(id string) {
	s.change(func(l library) error { return l.bikes.Remove(id) }, func(error) { s.back() })
}

func (s *Shell) editSetupNamed(id, name string) {
	s.withBike(id, func(b store.Bike) {
		s.editSetup(b, slices.IndexFunc(b.Setups, func(x store.Setup) bool { return x.Name == name }))
	})
}

// editSetup opens the form of a setup, a new one at −1.
func (s *Shell) editSetup(b store.Bike, at int) {
	c, t := s.screen.C, s.screen.C.Book.Bikes
	b.Setups = slices.Clone(b.Setups)
	title := t.EditSetup
	if at < 0 {
		b.Setups = append(b.Setups, store.Setup{})
		at, title = len(b.Setups)-1, t.NewSetup
	}
	x := &b.Setups[at]
	f := newForm(c)
	f.text("name", t.SetupName, "", t.SetupNameHint, &x.Name)
	f.text("changed", t.Changed, t.ChangedHint, "", &x.Changed)
	f.number("mass", t.SetupMass, t.SetupMassHint, &x.Mass, c.MassQuantity(60, 1500))
	f.number("front", t.TyreFront, "", &x.TyreFront, c.TyreQuantity())
	f.number("rear", t.TyreRear, "", &x.TyreRear, c.TyreQuantity())
	save := func() {
		for i, o := range b.Setups {
			if i != at && o.Name == x.Name {
				f.faults["name"] = t.Twice
				s.again()
				return
			}
		}
		if !f.check() {
			s.again()
			return
		}
		s.keepBike(b, func(err error) { f.trouble = s.screen.C.Error(err); s.again() })
	}
	s.push(func() *kit.Page {
		groups := []screens.FormGroup{{Hint: t.SetupsHint, Fields: f.fields("name", "changed")}, {Title: t.Optional, Fields: f.fields("mass", "front", "rear")}}
		return s.screen.Form(title, groups, f.trouble, s.goBack, save, nil, "", "")
	})
}
