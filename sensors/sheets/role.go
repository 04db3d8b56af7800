package sheets

import "stillair/sensors/finding"

// role is the meaning of a column.
type role int

const (
	none      role = iota
	clock          // time of the row
	fixClock       // time of the satellite fix in the row
	turnClock      // time of the gyroscope's reading in the row
	kind           // names the sensor of the row
	force          // force, force+1, force+2: specific force along x, y and z
	linear    = force + 3
	gravity   = linear + 3
	turn      = gravity + 3
	speed     = turn + 3
	speedSD   = speed + 1
	latitude  = speed + 2
	longitude = speed + 3
	altitude  = speed + 4
	bearing   = speed + 5
	radius    = speed + 6 // horizontal accuracy
	pressure  = speed + 7
	roles     = speed + 8
)

// quantity is the quantity that a unit measures.
type quantity int

const (
	pureNumber quantity = iota
	ofTime
	ofForce
	ofTurn
	ofSpeed
	ofAngle
	ofLength
	ofPressure
)

func (r role) quantity() quantity {
	switch {
	case r == clock || r == fixClock || r == turnClock:
		return ofTime
	case r >= force && r < turn:
		return ofForce
	case r >= turn && r < speed:
		return ofTurn
	}
	switch r {
	case speed, speedSD:
		return ofSpeed
	case latitude, longitude, bearing:
		return ofAngle
	case altitude, radius:
		return ofLength
	case pressure:
		return ofPressure
	}
	return pureNumber
}

// name is the finding that names a role in a note.
func (r role) name() finding.Finding {
	switch {
	case r >= force && r < linear:
		return finding.New("sheets.force")
	case r >= linear && r < gravity:
		return finding.New("sheets.linear")
	case r >= gravity && r < turn:
		return finding.New("sheets.gravity")
	case r >= turn && r < speed:
		return finding.New("sheets.turn")
	}
	switch r {
	case speed:
		return finding.New("sheets.speed")
	case latitude, longitude:
		return finding.New("sheets.position")
	case pressure:
		return finding.New("sheets.pressure")
	}
	return finding.New("sheets.time")
}
