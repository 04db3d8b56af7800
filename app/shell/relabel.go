package shell

import (
	"math"
	"slices"

	"stillair/app/relabel"
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
)

// editSetups opens the setups of the open ride. Saving them recomputes it;
// the recording keeps its own values.
func (s *Shell) editSetups() {
	if s.opened.table == nil {
		return // not measured yet, or no ride at all
	}
	table := *s.opened.table
	table.Setups = slices.Clone(table.Setups)
	on := screens.RelabelActions{Back: s.goBack,
		Setup: func(i int) { s.editRideSetup(&table, i) },
		Halt:  func(i int) { s.splitRide(&table, table.Halts[i].Middle()) },
		Time:  func() { s.splitRide(&table, math.NaN()) },
		Save: func() {
			var v store.Values
			if had := s.opened.ses.About.Values; had != nil {
				v = *had
			}
			v.SetSetups(table.Setups)
			s.computeWith(v)
		}}
	s.push(func() *kit.Page { return s.screen.Relabel(s.screen.C.Relabel(&table), on) })
}

// editRideSetup opens the form of one setup.
func (s *Shell) editRideSetup(table *relabel.Table, i int) {
	x := table.Setups[i]
	mass := known(x.Mass)
	f := s.setupForm(&x.Name, &mass, &x.Tyres, &x.Notes, table.Mass)
	save := func() {
		if !f.check() {
			s.again()
			return
		}
		x.Mass = orNaN(mass)
		table.Setups[i] = x
		for k, y := range table.Setups { // the same setup again, later or before
			if y.Name == x.Name {
				table.Setups[k].Mass, table.Setups[k].Tyres = x.Mass, x.Tyres
			}
		}
		s.back()
	}
	var remove func()
	if i > 0 {
		remove = func() {
			table.Setups = slices.Delete(table.Setups, i, i+1)
			s.back()
		}
	}
	t := s.screen.C.Book
	s.push(func() *kit.Page {
		return s.screen.Form(t.Bikes.EditSetup, []screens.FormGroup{{Fields: f.fields("name", "mass", "tyres", "notes")}}, f.trouble,
			s.goBack, save, remove, t.Relabel.Remove, t.Relabel.RemoveHint)
	})
}

// splitRide opens the form of a setup that begins at a time of the recording;
// NaN: the rider says when.
func (s *Shell) splitRide(table *relabel.Table, at float64) {
	t := s.screen.C.Book.Relabel
	var name, when, tyres, notes string
	var mass *float64
	f := s.setupForm(&name, &mass, &tyres, &notes, table.Mass)
	keys := []string{"name", "mass", "tyres", "notes"}
	asked := math.IsNaN(at)
	if asked {
		f.text("when", t.When, t.WhenHint, t.WhenExample, &when)
		keys = append([]string{"when"}, keys...)
	}
	save := func() {
		good := f.check()
		if asked {
			var err error
			if at, err = table.Time(when); err != nil {
				f.faults["when"], good = s.screen.C.RelabelFault(err), false
			}
		}
		if good {
			if err := table.Split(at, name); err != nil {
				f.trouble, good = s.screen.C.RelabelFault(err), false
			}
		}
		if !good {
			s.again()
			return
		}
		for i := range table.Setups {
			if x := &table.Setups[i]; x.From == at {
				if mass != nil {
					x.Mass = *mass
				}
				if tyres != "" {
					x.Tyres = tyres
				}
				x.Notes = notes
			}
		}
		s.back()
	}
	s.push(func() *kit.Page {
		return s.screen.Form(s.screen.C.Book.Bikes.NewSetup, []screens.FormGroup{{Fields: f.fields(keys...)}}, f.trouble, s.goBack, save, nil, "", "")
	})
}

// setupForm has the entries for a setup; rideMass is the weight it has where
// none is entered.
func (s *Shell) setupForm(name *string, mass **float64, tyres, notes *string, rideMass float64) *form {
	c, t, b := s.screen.C, s.screen.C.Book.Relabel, s.screen.C.Book.Bikes
	f := newForm(c)
	f.text("name", b.SetupName, "", b.SetupNameHint, name)
	f.numberWas("mass", b.SetupMass, t.WeightHint, mass, c.MassQuantity(60, 1500), rideMass)
	f.text("tyres", t.Tyres, t.TyresHint, "", tyres)
	f.text("notes", t.Notes, "", "", notes)
	return f
}

func known(x float64) *float64 {
	if math.IsNaN(x) {
		return nil
	}
	return &x
}

func orNaN(p *float64) float64 {
	if p == nil {
		return math.NaN()
	}
	return *p
}
