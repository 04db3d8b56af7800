package sensors

// Drive is what holds engine and rear wheel together, as far as it decides what
// can be measured: a bike whose drive cannot be let free never rolls by itself.
type Drive string

// The drives, as ride.json names them.
const (
	NoDrive       Drive = ""         // not entered: assumed to roll free
	DriveClutch   Drive = "clutch"   // gears and a clutch, whatever takes the force to the wheel
	DriveVariator Drive = "variator" // the belt of a scooter, which the rider cannot let free
	DriveElectric Drive = "electric" // a motor that turns with the wheel and may brake
)

// Drives are those that can be entered.
func Drives() []Drive { return []Drive{DriveClutch, DriveVariator, DriveElectric} }

// RollsFree reports whether a bike can roll by itself, held back by air and tyres
// and little else.
func (d Drive) RollsFree() bool { return d != DriveVariator && d != DriveElectric }

// Steps reports whether there are gears: without them what the bike gives at full
// throttle is one curve over road speed.
func (d Drive) Steps() bool { return d.RollsFree() }
