package shown

import "stillair/sensors/units"

// FuelUnit is how consumption is shown.
type FuelUnit string

// The units of consumption.
const (
	LitresPer100Km    FuelUnit = "l/100 km"
	MilesPerGallonUS  FuelUnit = "mpg (US)"
	MilesPerGallonImp FuelUnit = "mpg (imperial)"
)

// FuelFor is the usual unit of a region with that system: its own miles per
// gallon where fuel is sold or quoted by the gallon.
func FuelFor(region string, s System) FuelUnit {
	switch {
	case s == Imperial && region == "US":
		return MilesPerGallonUS
	case s == Imperial && region == "GB":
		return MilesPerGallonImp
	}
	return LitresPer100Km
}

// Gallon is the gallon of the unit, m³; 0 where consumption is in litres.
func (f FuelUnit) Gallon() float64 {
	switch f {
	case MilesPerGallonUS:
		return units.GallonUS
	case MilesPerGallonImp:
		return units.GallonImp
	}
	return 0
}
