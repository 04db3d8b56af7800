package shell

import (
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/view"
	"stillair/runs/gearing"
)

// parts is what a form of a bike holds of wheels, teeth and fuel until it is
// saved.
type parts struct {
	wheels         store.Wheels
	box            store.Box
	burn, at, tank *float64
	battery        *float64
	limit          *float64
	cylinders      *float64
}

func partsOf(b store.Bike) *parts {
	p := &parts{limit: b.LimitRPM, battery: b.Battery}
	if b.Cylinders > 0 {
		n := float64(b.Cylinders)
		p.cylinders = &n
	}
	if b.Wheels != nil {
		p.wheels = *b.Wheels
	}
	if b.Box != nil {
		p.box = *b.Box
	}
	if f := b.Fuel; f != nil {
		p.burn, p.at = &f.LitresPer100Km, &f.SpeedMPS
		if f.Tank > 0 {
			p.tank = &f.Tank
		}
	}
	return p
}

// keep puts the parts into a bike; what was not entered stays out of it.
func (p *parts) keep(b *store.Bike) {
	b.LimitRPM, b.Battery, b.Wheels, b.Box, b.Fuel = p.limit, p.battery, nil, nil, nil
	if b.Cylinders = 0; p.cylinders != nil {
		b.Cylinders = int(*p.cylinders)
	}
	if p.wheels != (store.Wheels{}) {
		w := p.wheels
		b.Wheels = &w
	}
	if len(p.box.Gears) > 0 || p.box.Primary != (store.Teeth{}) || p.box.Final != (store.Teeth{}) {
		x := p.box
		b.Box = &x
	}
	if p.burn != nil && p.at != nil {
		b.Fuel = &store.Fuel{LitresPer100Km: *p.burn, SpeedMPS: *p.at}
		if p.tank != nil {
			b.Fuel.Tank = *p.tank
		}
	}
}

// groups are the fields of the parts in a form.
func (p *parts) groups(f *form) []screens.FormGroup {
	c, t := f.c, f.c.Book.Parts
	f.tyre("front tyre", t.FrontTyre, t.TyreExample, &p.wheels.FrontTyre)
	f.tyre("rear tyre", t.RearTyre, t.TyreExample, &p.wheels.RearTyre)
	f.number("front wheel", t.FrontWheel, "", &p.wheels.FrontMass, c.MassQuantity(2, 60))
	f.number("rear wheel", t.RearWheel, "", &p.wheels.RearMass, c.MassQuantity(2, 60))
	f.teeth("primary", t.Primary, "44/70", &p.box.Primary)
	f.gearTeeth("gear teeth", t.GearTeeth, t.GearExample, &p.box)
	f.teeth("final", t.Final, t.TeethExample, &p.box.Final)
	f.number("limit", t.Limit, "", &p.limit, c.LimitQuantity())
	f.number("cylinders", t.Cylinders, t.CylindersHint, &p.cylinders, view.Quantity{SI: 1, Low: 1, High: 12})
	f.number("fuel", t.Fuel, "", &p.burn, c.FuelQuantity())
	f.number("fuel at", t.FuelSpeed, "", &p.at, c.SpeedQuantity())
	f.number("tank", t.Tank, "", &p.tank, c.TankQuantity())
	f.number("battery", t.Battery, t.BatteryHint, &p.battery, view.Quantity{Unit: "kWh", SI: 1, Low: store.LeastBattery, High: store.MostBattery, Decimals: 1})
	return []screens.FormGroup{
		{Title: t.WheelsTitle, Hint: t.WheelsHint, Fields: f.fields("front tyre", "rear tyre", "front wheel", "rear wheel")},
		{Title: t.BoxTitle, Hint: t.BoxHint, Fields: f.fields("primary", "gear teeth", "final", "limit", "cylinders")},
		{Title: t.FuelTitle, Hint: t.FuelHint, Fields: f.fields("fuel", "fuel at", "tank")},
		{Title: t.BatteryTitle, Fields: f.fields("battery")},
	}
}

// whole reports whether the figures of consumption are both given or neither.
func (p *parts) whole(f *form) bool {
	if (p.burn == nil) == (p.at == nil) {
		return true
	}
	f.faults["fuel at"] = f.c.Book.Parts.FuelBoth
	return false
}

// tyre is a field of a tyre's size.
func (f *form) tyre(key, name, example string, into *string) {
	f.add(key, kit.Field{Name: name, Example: example}, *into, func(typed string) string {
		if _, err := gearing.ParseTyre(typed); typed != "" && err != nil {
			return f.c.Book.Parts.NotTyre
		}
		*into = typed
		return ""
	})
}

// teeth is a field of a driving and a driven wheel.
func (f *form) teeth(key, name, example string, into *store.Teeth) {
	f.add(key, kit.Field{Name: name, Example: example}, into.String(), func(typed string) string {
		if typed == "" {
			*into = store.Teeth{}
			return ""
		}
		x, err := store.ParseTeeth(typed)
		if err != nil {
			return f.c.Book.Parts.NotTeeth
		}
		*into = x
		return ""
	})
}

// gearTeeth is a field of all gears.
func (f *form) gearTeeth(key, name, example string, into *store.Box) {
	f.add(key, kit.Field{Name: name, Example: example}, into.GearsText(), func(typed string) string {
		gears, err := store.ParseGears(typed)
		if err != nil {
			return f.c.Book.Parts.NotTeeth
		}
		into.Gears = gears
		return ""
	})
}
