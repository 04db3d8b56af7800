package sheets

import "strings"

// sense is the sensor that words refer to.
type sense int

const (
	unsaid sense = iota
	other        // not used here
	senseForce
	senseLinear
	senseGravity
	senseTurn
	sensePlace
	sensePressure
)

// senseOf finds the sensor named by words.
func senseOf(words []string) sense {
	gravityNamed := has(words, "gravity…|grav|schwerkraft|gravitation…")
	accelerationNamed := has(words, "accel…|acc|beschleunigung…|gforce|acceleration…") || has(words, "g") && has(words, "force")
	switch {
	case has(words, "magnet…|mag|compass|orient…|attitude|quat…|euler|roll|pitch|yaw|azimuth|light|lux|prox…|step…|heart…|battery|sound|noise|wind…|activity|temp…"),
		has(words, "rotation…") && has(words, "vector"), has(words, "rotationvector"):
		return other
	case has(words, "gyro…|gyr|angular|rotationrate|drehrate|winkelgeschwindigkeit|omega"), has(words, "rotation") && has(words, "rate"):
		return senseTurn
	case has(words, "linear|lin|linacc|linearacceleration|user|useracceleration"),
		has(words, "without|ohne|excluding|excl|no|minus") && (gravityNamed || has(words, "g")):
		return senseLinear
	case accelerationNamed:
		return senseForce
	case gravityNamed:
		return senseGravity
	case has(words, "gps|gnss|location…|position|loc|standort|geolocation|satellite…|fix"):
		return sensePlace
	case has(words, "pressure|baro…|druck|luftdruck"):
		return sensePressure
	}
	return unsaid
}

// axisOf finds the axis that words end with, from 0, and the sensor that a
// short form such as "ax" or "wy" means; −1 for no axis.
func axisOf(words []string) (int, sense) {
	for i := len(words) - 1; i >= 0; i-- {
		w := words[i]
		axis := strings.IndexByte("xyz", w[len(w)-1])
		if len(w) == 1 && axis >= 0 {
			return axis, unsaid
		}
		if n := strings.IndexByte("012", w[len(w)-1]); n >= 0 && (w[:len(w)-1] == "value" || w[:len(w)-1] == "values" || len(w) == 1 && i > 0 && has(words[:i], "value|values")) {
			return n, unsaid
		}
		if axis < 0 {
			continue
		}
		switch w[:len(w)-1] {
		case "a", "acc", "accel", "ac", "gf", "f":
			return axis, senseForce
		case "g", "gyr", "gyro", "w", "r", "omega":
			return axis, senseTurn
		case "grav", "gr":
			return axis, senseGravity
		case "la", "lin", "linacc", "ua":
			return axis, senseLinear
		case "m", "mag", "b", "o":
			return axis, other
		}
	}
	return -1, unsaid
}

// roleOf finds the role of a column from its name and the words around it: the
// name of its file, or the kind of its row. rank is higher for a second choice.
func roleOf(name string, around []string) (r role, rank int) {
	outside, _ := brackets(name)
	words := wordsOf(outside)
	if len(words) == 0 {
		return none, 0
	}
	own, near := senseOf(words), senseOf(around)
	if has(words, "uncalibrated|raw") || has(around, "uncalibrated|raw") {
		rank = 1
	}
	if r := clockRole(words, own); r != none {
		return r, rank
	}
	if r := placeRole(words, own); r != none {
		return r, rank
	}
	if own == other || own == unsaid && near == other {
		return none, 0
	}
	axis, short := axisOf(words)
	if axis < 0 {
		if (own == sensePressure || has(words, "value") && near == sensePressure) && !has(words, "sea|altitude|accuracy") {
			return pressure, rank
		}
		return none, 0
	}
	said := own
	if said == unsaid {
		said = short
	}
	if said == unsaid {
		said = near
		if near == unsaid {
			rank += 2
		}
	}
	switch said {
	case senseForce, unsaid:
		return force + role(axis), rank
	case senseLinear:
		return linear + role(axis), rank
	case senseGravity:
		return gravity + role(axis), rank
	case senseTurn:
		return turn + role(axis), rank
	}
	return none, 0
}

// clockRole finds columns of time.
func clockRole(words []string, own sense) role {
	if has(words, "sensor|type|sensorname|sensortype|kind") && !has(words, "time|timestamp") || len(words) == 1 && words[0] == "name" {
		return kind
	}
	if !has(words, "time…|zeit…|t|elapsed|seconds|millis|milliseconds|epoch|unix…|utc|date…|datum|uhrzeit|since…") || has(words, "accuracy|zone|timezone") {
		return none
	}
	switch own {
	case sensePlace:
		return fixClock
	case senseTurn:
		return turnClock
	case other, senseGravity, sensePressure:
		return none
	}
	return clock
}

// placeRole finds the columns of a satellite receiver.
func placeRole(words []string, own sense) role {
	deviation := has(words, "accuracy|genauigkeit|sd|sigma|uncertainty|error|stddev|std")
	fast := has(words, "speed|velocity|geschwindigkeit|sog|tempo")
	switch {
	case own == senseTurn, own == other, has(words, "vertical|wind|max|avg|mean|average"):
		return none
	case deviation && fast:
		return speedSD
	case deviation && has(words, "bearing|heading|course|altitude|direction"):
		return none
	case deviation && (own == sensePlace || has(words, "horizontal|h|position") || len(words) == 1):
		return radius
	case deviation:
		return none
	case fast:
		return speed
	case has(words, "lat|latitude|breite|breitengrad"):
		return latitude
	case has(words, "lon|lng|long|longitude|länge|laenge|längengrad|laengengrad"):
		return longitude
	case has(words, "alt|altitude|elevation|ele|height|höhe|hoehe") && !has(words, "relative|baro…|pressure"):
		return altitude
	case has(words, "bearing|heading|course|cog|direction|richtung|kurs") && !has(words, "true|magnetic"):
		return bearing
	}
	return none
}
