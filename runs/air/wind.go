package air

import (
	"math"

	"stillair/runs/measure"
	"stillair/sensors/units"
)

// Apparent is the air as a bike at v m/s meets it in a wind of so many m/s:
// its speed, m/s, and the yaw, rad, at which it comes. angle, rad, is between
// the direction of travel and where the wind comes from; 0 is a wind from
// straight ahead. The formula is that of 40 CFR 1037.528.
func Apparent(v, wind, angle float64) (speed, yaw float64) {
	ahead, across := v+wind*math.Cos(angle), wind*math.Sin(angle)
	return math.Hypot(ahead, across), math.Atan2(across, ahead)
}

// A weather station measures at 10 m; at a rider's height and beside a road
// there is less. Over open grass (roughness length 0.03 m, the log profile of
// any meteorology textbook, from memory) 1.2 m gets ln(1.2/0.03)/ln(10/0.03) =
// 0.63 of it; hedges and banks leave about half of that (common practice). Half
// of it, give or take a fifth, spans both. A station that is not at the road
// differs by some 20 degrees (common practice), and resolves 0.5 m/s at best
// (the World Meteorological Organization's guide, from memory).
const (
	nearRoad    = 0.5
	nearRoadSD  = 0.2
	stationTurn = 20 * units.Degree
	stationSD   = 0.5 // m/s
)

// Across is the wind across a road, m/s, without its sign: from what a weather
// station gives as speed, m/s, and where it comes from, and the way of the road,
// both in degrees clockwise from north.
func Across(speed, fromDeg, roadDeg float64) measure.Value {
	angle := (fromDeg - roadDeg) * units.Degree
	sin, cos := math.Abs(math.Sin(angle)), math.Abs(math.Cos(angle))
	return measure.Value{X: nearRoad * speed * sin, SE: math.Hypot(stationSD, speed*math.Hypot(nearRoadSD*sin, nearRoad*stationTurn*cos))}
}
