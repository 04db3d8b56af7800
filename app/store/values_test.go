package store_test

import (
	"bytes"
	"math"
	"slices"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/export/session"
	"stillair/sensors"
)

func ptr(x float64) *float64 { return &x }

// rideOf keeps a short recording of a bike, ridden with one setup.
func rideOf(t *testing.T, sessions *store.Sessions, ride sensors.Ride) string {
	t.Helper()
	id, f, err := sessions.Begin(store.About{})
	if err != nil {
		t.Fatal(err)
	}
	w, err := session.NewWriter(session.ToFile(f), session.Header{ID: session.ID{1}, Start: math.NaN()}, ride)
	if err != nil {
		t.Fatal(err)
	}
	for i := range 20 {
		w.Fix(sensors.NewFix(float64(i), 20))
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return id
}

// TestHistoryIsNotRewritten edits the bike, its setup and the values of a ride
// after it was ridden: the recording is unchanged to the byte, and only the
// ride whose values were changed is computed with others.
func TestHistoryIsNotRewritten(t *testing.T) {
	files := platformtest.NewMemory()
	clock := platform.NewSystemClock()
	sessions, bikes := store.NewSessions(files, clock), store.NewBikes(files, clock)
	b, err := bikes.Put(store.Bike{Name: "test bike", Mass: ptr(290), Setups: []store.Setup{{Name: "boxes", Mass: ptr(302)}}})
	if err != nil {
		t.Fatal(err)
	}
	id := rideOf(t, sessions, b.Ride("boxes", sensors.UnknownRide().Air))
	_, before, err := sessions.Bytes(id)
	if err != nil {
		t.Fatal(err)
	}
	b.Name, b.Mass, b.Setups[0].Mass, b.Setups[0].Name = "renamed", ptr(250), ptr(260), "cases"
	if b, err = bikes.Put(b); err != nil {
		t.Fatal(err)
	}
	if err := sessions.Update(id, func(a *store.About) {
		a.Values = &store.Values{Mass: ptr(280), SetupMass: map[string]*float64{"boxes": ptr(295)}}
	}); err != nil {
		t.Fatal(err)
	}
	if err := bikes.Remove(b.ID); err != nil {
		t.Fatal(err)
	}
	_, after, err := sessions.Bytes(id)
	if err != nil || !bytes.Equal(before, after) {
		t.Fatalf("the recording changed (%v)", err)
	}
	rec, err := sessions.Read(id)
	if err != nil {
		t.Fatal(err)
	}
	if r := rec.Log.Ride; r.Bike != "test bike" || r.Mass != 290 || len(r.Setups) != 1 || r.Setups[0].Name != "boxes" || r.Setups[0].Mass != 302 {
		t.Errorf("the recording now says %+v", r)
	}
	ses, err := sessions.Get(id)
	if err != nil {
		t.Fatal(err)
	}
	if r := ses.About.Values.Apply(rec.Log.Ride); r.Mass != 280 || r.Setups[0].Mass != 295 {
		t.Errorf("computed with %+v", r)
	}
	if rec.Log.Ride.Setups[0].Mass != 302 {
		t.Error("applying values changed what was recorded")
	}
}

func TestValuesApply(t *testing.T) {
	ride := sensors.Ride{Mass: 290, MassSD: 3, RotatingMass: 11, WindSD: math.NaN(), Air: sensors.Air{Temperature: 18, TemperatureEnd: 18, Pressure: 100900, Humidity: 0.6}}
	var none *store.Values
	if r := none.Apply(ride); r.Mass != 290 || r.Air != ride.Air {
		t.Errorf("no values changed the ride to %+v", r)
	}
	v := store.Values{WindSD: ptr(0.5), Air: store.Air{Pressure: ptr(995), Humidity: ptr(40)}}
	r := v.Apply(ride)
	if r.WindSD != 0.5 || r.Air.Pressure != 99500 || math.Abs(r.Air.Humidity-0.4) > 1e-12 || r.Air.Temperature != 18 || r.Mass != 290 {
		t.Errorf("got %+v", r)
	}
	station := store.Values{Station: store.Station{Speed: ptr(4), From: ptr(230)}, Air: store.Air{TemperatureEnd: ptr(23)}}
	if r := station.Apply(ride); station.Empty() || r.Station != (sensors.Wind{Speed: 4, FromDeg: 230}) || r.Air.TemperatureEnd != 23 || r.Air.Temperature != 18 {
		t.Errorf("got %+v", r)
	}
	if v.Empty() || !(store.Values{SetupMass: map[string]*float64{"a": nil}}).Empty() {
		t.Error("Empty is wrong")
	}
}

func TestTeeth(t *testing.T) {
	for _, tt := range []struct {
		name, in string
		want     store.Teeth
		fails    bool
	}{
		{name: "slash", in: "16/40", want: store.Teeth{Driving: 16, Driven: 40}},
		{name: "colon and room", in: " 44 : 70 ", want: store.Teeth{Driving: 44, Driven: 70}},
		{name: "a ratio", in: "2.5", fails: true},
		{name: "words", in: "many", fails: true},
	} {
		got, err := store.ParseTeeth(tt.in)
		if got != tt.want || (err != nil) != tt.fails {
			t.Errorf("%s: %v, %v", tt.name, got, err)
		}
	}
	gears, err := store.ParseGears("13/37, 16/32,19/30")
	if err != nil || len(gears) != 3 || (store.Box{Gears: gears}).GearsText() != "13/37, 16/32, 19/30" {
		t.Errorf("gears %v, %v", gears, err)
	}
}

// TestGearsAreChangedByName changes one gear, adds one and leaves one, and
// checks that the recorded ride is unchanged.
func TestGearsAreChangedByName(t *testing.T) {
	ride := sensors.UnknownRide()
	ride.Gears = []sensors.Gear{{Name: "3", RPMPerMPS: 210}, {Name: "4", RPMPerMPS: 165}}
	v := store.Values{Gears: map[string]*float64{"4": ptr(170), "5": ptr(140), "6": nil}, LimitRPM: ptr(10500)}
	if v.Empty() || !(store.Values{Gears: map[string]*float64{"6": nil}}).Empty() {
		t.Error("a changed gear counts as nothing, or nothing as a changed gear")
	}
	r := v.Apply(ride)
	want := []sensors.Gear{{Name: "3", RPMPerMPS: 210}, {Name: "4", RPMPerMPS: 170}, {Name: "5", RPMPerMPS: 140}}
	if !slices.Equal(r.Gears, want) || r.LimitRPM != 10500 {
		t.Errorf("applied: %v, at most %g", r.Gears, r.LimitRPM)
	}
	if ride.Gears[1].RPMPerMPS != 165 || len(ride.Gears) != 2 {
		t.Errorf("what was ride is now %v", ride.Gears)
	}
}

// TestValuesOfTheBikeAsItIsNow checks that a ride computed with its bike's
// present values gives the same result as if it had been recorded with them.
func TestValuesOfTheBikeAsItIsNow(t *testing.T) {
	then := store.Bike{Name: "test bike", Mass: ptr(290), Gears: []store.Gear{{Name: "4", RPMPerMPS: 165}},
		Setups: []store.Setup{{Name: "boxes", Mass: ptr(302)}}}
	ride := then.Ride("boxes", sensors.UnknownRide().Air)
	if v := store.OfBike(then, ride); !v.Empty() {
		t.Errorf("of the same bike: %+v", v)
	}
	now := store.Bike{Name: "test bike", Mass: ptr(285), MassSD: ptr(2), RotatingMass: ptr(9), LimitRPM: ptr(11000),
		Gears: []store.Gear{{Name: "4", RPMPerMPS: 168}, {Name: "5", RPMPerMPS: 140}}, Setups: []store.Setup{{Name: "boxes", Mass: ptr(299)}}}
	v := store.OfBike(now, ride)
	got, want := v.Apply(ride), now.Ride("boxes", sensors.UnknownRide().Air)
	if got.Mass != want.Mass || got.MassSD != want.MassSD || got.RotatingMass != want.RotatingMass || got.LimitRPM != want.LimitRPM ||
		!slices.Equal(got.Gears, want.Gears) || got.Setups[0] != want.Setups[0] {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

// TestOldAir checks when entered air is out of date.
func TestOldAir(t *testing.T) {
	zone := time.FixedZone("CET", 3600)
	noon := time.Date(2026, 11, 25, 12, 0, 0, 0, zone)
	for _, c := range []struct {
		name string
		then time.Time
		old  bool
	}{
		{"just now", noon.Add(-time.Minute), false},
		{"this morning", noon.Add(-5 * time.Hour), false},
		{"early this morning", noon.Add(-7 * time.Hour), true},
		{"last night, in another zone's name", noon.Add(-13 * time.Hour).UTC(), true},
		{"the clock was set back", noon.Add(time.Hour), false},
		{"not known", time.Time{}, true},
	} {
		if got := store.AirIsOld(c.then, noon); got != c.old {
			t.Errorf("%s: %v, want %v", c.name, got, c.old)
		}
	}
	midnight := time.Date(2026, 11, 25, 0, 10, 0, 0, zone)
	if !store.AirIsOld(midnight.Add(-20*time.Minute), midnight) {
		t.Error("air of the day before counts as that of today")
	}
	c := store.Choices{Air: store.Air{Temperature: ptr(18), Pressure: ptr(1009)}, AirEntered: store.AirEntered{Temperature: noon, Wind: midnight}}
	if since, known := c.AirSince(); !known || !since.IsZero() {
		t.Errorf("a pressure of unknown age: since %v, %v", since, known)
	}
	if _, known := (store.Choices{AirEntered: store.AirEntered{Wind: midnight}}).AirSince(); known {
		t.Error("no air counts as entered")
	}
}
