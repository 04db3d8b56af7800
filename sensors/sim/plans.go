package sim

import "stillair/sensors/units"

// CoastPairs is n pairs of coast-downs between the two speeds, out and back on
// the stretch of road that begins at x = 0, each pair with its own mean wind.
func CoastPairs(n int, from, to float64) []Act {
	plan := make([]Act, 0, n)
	for range n {
		plan = append(plan, CoastPair{From: from, To: to})
	}
	return plan
}

// FartherPairs is n pairs of coast-downs between the two speeds, each of which
// begins farther along in its direction, out and back, than the one before it;
// the middle one rolls the stretch of CoastPairs.
func FartherPairs(n int, from, to, farther float64) []Act {
	plan := make([]Act, 0, n)
	for i := range n {
		plan = append(plan, CoastPair{From: from, To: to, Farther: farther * (float64(i) - float64(n-1)/2)})
	}
	return plan
}

// Launches is n launches to the speed and distance, out and back in turn.
func Launches(n int, toSpeed, toDist float64) []Act {
	var plan []Act
	for range n {
		plan = append(plan, Stand{Seconds: 8}, Launch{ToSpeed: toSpeed, ToDist: toDist}, Reach{Speed: 15}, TurnRound{})
	}
	return plan
}

// RollOns is n roll-ons between the speeds in a gear, out and back in turn.
func RollOns(n, gear int, from, to float64) []Act {
	var plan []Act
	for range n {
		plan = append(plan, RollOn{Gear: gear, From: from, To: to}, Hold{Speed: to, Seconds: 3}, TurnRound{})
	}
	return plan
}

// Pulls is n pulls each way in a gear.
func Pulls(n, gear int) []Act {
	var plan []Act
	for range 2 * n {
		plan = append(plan, Pull{Gear: gear}, Reach{Speed: 15}, TurnRound{})
	}
	return plan
}

// Passes is n times there and back at full throttle over a distance in m.
func Passes(n int, far float64) []Act {
	var plan []Act
	for range 2 * n {
		plan = append(plan, Stand{Seconds: 8}, Launch{ToDist: far}, Brake{To: 15}, TurnRound{})
	}
	return plan
}

// PerturbedCoast is n pairs with one disturbed run in each of the first three:
// a touch of the brake on the way out of the first, a passing truck on the way
// back of the second, a gear left in on the way out of the third.
func PerturbedCoast(n int, from, to float64) []Act {
	mid := (from + to) / 2
	plan := CoastPairs(n, from, to)
	spoils := []struct {
		way   int
		spoil Spoil
	}{
		{0, Spoil{Kind: Brush, AtSpeed: mid, Seconds: 1.5, Size: 250}},
		{1, Spoil{Kind: Truck, AtSpeed: mid, Seconds: 4, Size: 8}},
		{0, Spoil{Kind: GearIn, AtSpeed: from, Seconds: 60}},
	}
	for i, s := range spoils[:min(n, len(spoils))] {
		pair := plan[i].(CoastPair)
		pair.Spoils[s.way] = []Spoil{s.spoil}
		plan[i] = pair
	}
	return plan
}

// DemoPlan is a whole invented morning: launches, roll-ons, pulls, coast-downs
// with two setups in the order A, B, B, A, and home through town.
func DemoPlan(b Bike) []Act {
	short := Setup{Name: "short screen"}
	tall := Setup{Name: "tall screen", CdA: 1.09 * b.CdA, Mass: b.Mass + 1}
	plan := []Act{Change{Setup: short, Seconds: 20}}
	plan = append(plan, Launches(2, 120*units.KMH, 420)...)
	plan = append(plan, RollOns(2, 0, 60*units.KMH, 120*units.KMH)...)
	plan = append(plan, Pulls(1, 4)...)
	for i, s := range []Setup{short, tall, tall, short} {
		if i > 0 {
			plan = append(plan, Change{Setup: s, Seconds: 60})
		}
		plan = append(plan, CoastPairs(2, 110*units.KMH, 30*units.KMH)...)
	}
	return append(plan, Town{Minutes: 3}, Stand{Seconds: 15})
}
