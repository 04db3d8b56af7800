package sensors

// Drive is the kind of connection between engine and rear wheel, as far as it
// decides what can be measured: a bike whose drive cannot be disengaged never
// coasts.
type Drive string

// The drives, as ride.json names them.
const (
	NoDrive       Drive = ""         // not entered: assumed to roll free
	DriveClutch   Drive = "clutch"   // gears and a clutch, with any final drive
	DriveVariator Drive = "variator" // the belt of a scooter, which the rider cannot disengage
	DriveElectric Drive = "electric" // a motor that turns with the wheel and may brake
)

// Drives are those that can be entered.
func Drives() []Drive { return []Drive{DriveClutch, DriveVariator, DriveElectric} }

// RollsFree reports whether a bike can coast, slowed by air and tyres and
// little else.
func (d Drive) RollsFree() bool { return d != DriveVariator && d != DriveElectric }

// Steps reports whether there are gears; without them the full-throttle force
// is a single function of road speed.
func (d Drive) Steps() bool { return d.RollsFree() }
