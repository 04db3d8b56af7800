package store_test

import (
	"bytes"
	"math"
	"testing"

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
	w, err := session.NewWriter(session.ToFile(f), session.Header{Start: math.NaN()}, ride)
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
// after it was ridden: the recording stays as it is to the byte, and only the
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
	told := sensors.Ride{Mass: 290, MassSD: 3, RotatingMass: 11, WindSD: math.NaN(), Air: sensors.Air{Temperature: 18, Pressure: 100900, Humidity: 0.6}}
	var none *store.Values
	if r := none.Apply(told); r.Mass != 290 || r.Air != told.Air {
		t.Errorf("no values changed the ride to %+v", r)
	}
	v := store.Values{WindSD: ptr(0.5), Air: store.Air{Pressure: ptr(995), Humidity: ptr(40)}}
	r := v.Apply(told)
	if r.WindSD != 0.5 || r.Air.Pressure != 99500 || math.Abs(r.Air.Humidity-0.4) > 1e-12 || r.Air.Temperature != 18 || r.Mass != 290 {
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
