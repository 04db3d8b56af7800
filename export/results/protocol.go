package results

import (
	"io"
	"time"
)

// ProtocolVersion is the version of the test protocol that this package writes.
const ProtocolVersion = 1

// Protocol is the record of a coast-down test that another program can check:
// all inputs with their uncertainties, all results, and the intermediate
// quantities. A number has nine significant digits here, so that what is
// computed from it again has the digits that people read.
type Protocol struct {
	Version int              `json:"version"`
	Of      string           `json:"of"` // "coast-down test"
	Program string           `json:"program"`
	Method  ProtocolMethod   `json:"method"`
	Rides   []ProtocolRide   `json:"rides"`
	Across  []ProtocolChange `json:"across"` // between setups of different rides
}

// ProtocolMethod names the formulas by which the figures were computed.
type ProtocolMethod struct {
	Motion    string            `json:"motion"`
	Density   string            `json:"density"`
	Fit       string            `json:"fit"`
	Assumed   string            `json:"assumed"`
	Intervals string            `json:"intervals"`
	Reference ProtocolReference `json:"reference"`
}

// ProtocolReference is the state at which A and C are quoted.
type ProtocolReference struct {
	Temperature float64 `json:"temperature_c"`
	Pressure    float64 `json:"pressure_pa"`
	Humidity    float64 `json:"humidity"`
	Density     float64 `json:"density_kgpm3"`
	From        float64 `json:"from_mps"`
	To          float64 `json:"to_mps"`
}

// ProtocolRide is the test of one recording.
type ProtocolRide struct {
	Recording   string             `json:"recording"`
	SHA256      string             `json:"sha256,omitempty"`
	Bytes       int64              `json:"bytes,omitempty"`
	Bike        string             `json:"bike,omitempty"`
	Started     *time.Time         `json:"started,omitempty"`
	Invented    bool               `json:"invented,omitempty"`
	Inputs      ProtocolInputs     `json:"inputs"`
	Noise       ProtocolNoise      `json:"noise"`
	Setups      []ProtocolSetup    `json:"setups"`
	Pairs       []ProtocolPair     `json:"pairs"`
	Runs        []ProtocolRun      `json:"runs"`
	Road        []ProtocolKnot     `json:"road"`
	Residuals   ProtocolResiduals  `json:"residuals"`
	Differences []ProtocolChange   `json:"differences"`
	LeftOut     []ProtocolRejected `json:"left_out"`
	Findings    []Finding          `json:"findings,omitempty"`
}

// Measured is a value with its standard uncertainty, both in the unit that the
// field's name ends in.
type Measured struct {
	X  *float64 `json:"value,omitempty"`
	SE *float64 `json:"se,omitempty"`
}

// ProtocolInputs are what the test was given.
type ProtocolInputs struct {
	Temperature  Measured `json:"temperature_c"`
	Pressure     Measured `json:"pressure_pa"`
	Humidity     Measured `json:"humidity"`
	Density      Measured `json:"density_kgpm3"`
	Gravity      float64  `json:"gravity_mps2"`
	Mass         Measured `json:"mass_kg"`
	RotatingMass float64  `json:"rotating_mass_kg"`
	Growth       Measured `json:"growth_spm"`        // k, before the fit
	GrowthFitted Measured `json:"growth_fitted_spm"` // and after it
	WindSD       float64  `json:"wind_sd_mps"`
	GradeSD      float64  `json:"grade_sd"`
	Defaults     []string `json:"defaults"` // fields of ride.json whose default was used
}

// ProtocolNoise is how the errors behave, as learned from the runs.
type ProtocolNoise struct {
	GustSD    *float64 `json:"gust_sd_mps"`
	GustTime  *float64 `json:"gust_time_s"`
	WhiteSD   *float64 `json:"receiver_white_sd_mps"`
	DriftSD   *float64 `json:"receiver_drift_sd_mps"`
	DriftTime *float64 `json:"receiver_drift_time_s"`
	ShiftSD   *float64 `json:"wind_shift_sd_mps"`
	PostureSD *float64 `json:"drag_area_sd"` // relative, from run to run
	RoadSD    *float64 `json:"road_sd"`
}

// ProtocolSetup is the result of one setup.
type ProtocolSetup struct {
	Setup       string         `json:"setup"`
	Mass        *float64       `json:"mass_kg"`
	MassEntered bool           `json:"mass_entered"`
	Inertia     *float64       `json:"equivalent_inertia_kg"`
	Tyres       string         `json:"tyres,omitempty"`
	Pairs       int            `json:"pairs"`
	Runs        []int          `json:"runs"`
	CdA         Measured       `json:"cda_m2"`
	CdACI       *[2]float64    `json:"cda_ci95_m2,omitempty"`
	Crr         Measured       `json:"crr"`
	CrrCI       *[2]float64    `json:"crr_ci95,omitempty"`
	Cov         *float64       `json:"cda_crr_cov_m2,omitempty"`
	DoF         *float64       `json:"dof,omitempty"`
	A           Measured       `json:"a_n"`
	C           Measured       `json:"c_n_per_mps2"`
	CurveCdA    *float64       `json:"curves_cda_m2"` // used to compute the fitted speeds of the runs
	CurveCrr    *float64       `json:"curves_crr"`
	Budget      []ProtocolPart `json:"budget_m2"`
	Limits      []ProtocolPart `json:"limits_m2"`
}

// ProtocolPart is one part of an uncertainty.
type ProtocolPart struct {
	Code string   `json:"code"`
	SE   *float64 `json:"se"`
	Text string   `json:"text"`
}

// ProtocolPair is one pair of opposite runs.
type ProtocolPair struct {
	Pair    int      `json:"pair"`
	Setup   string   `json:"setup"`
	Runs    []int    `json:"runs"`
	Wind    Measured `json:"wind_mps"` // mean, against direction +1
	Shift   Measured `json:"wind_change_mps"`
	Grade   Measured `json:"grade"`
	CdA     Measured `json:"cda_alone_m2"`
	Crr     Measured `json:"crr_alone"`
	MoveCdA *float64 `json:"cda_without_m2"` // change of the setup's CdA without it
	MoveCrr *float64 `json:"crr_without"`
}

// ProtocolRun is one run. The arrays are parallel.
type ProtocolRun struct {
	Run         int       `json:"run"`
	Setup       string    `json:"setup"`
	Pair        int       `json:"pair"`
	Direction   float64   `json:"direction"` // +1 or −1
	Start       *float64  `json:"start_s"`
	From        *float64  `json:"from_mps"`
	To          *float64  `json:"to_mps"`
	CoastTime   *float64  `json:"coast_time_s"`
	Mass        *float64  `json:"mass_kg"`
	Inertia     *float64  `json:"equivalent_inertia_kg"`
	Temperature *float64  `json:"air_temperature_c"`
	Pressure    *float64  `json:"air_pressure_pa"`
	Density     *float64  `json:"air_density_kgpm3"`
	Against     *float64  `json:"wind_against_mps"`
	DragFactor  *float64  `json:"drag_area_factor"` // of the setup's drag area, in this run
	Misfit      *float64  `json:"misfit"`           // root mean square of whitened errors; 1 is usual
	Residual    *float64  `json:"residual_rms_mps"`
	MoveCdA     *float64  `json:"cda_without_m2"`
	MoveCrr     *float64  `json:"crr_without"`
	Cuts        int       `json:"cuts"` // stretches left out, after which the fitted speed starts again
	T           []float64 `json:"t_s"`
	Measured    []float64 `json:"speed_mps"`
	Fitted      []float64 `json:"fitted_mps"`
	Slope       []float64 `json:"slope"` // of the road in the direction of travel
	AirSpread   []float64 `json:"air_speed_variance_m2ps2"`
}

// ProtocolKnot is the slope of the road at a place, beyond each pair's mean.
type ProtocolKnot struct {
	At    *float64 `json:"at_m"`
	Slope Measured `json:"slope"`
}

// ProtocolResiduals are the residuals of the fit, by speed and direction.
type ProtocolResiduals struct {
	RMS      *float64      `json:"rms_mps"`
	Bins     []ProtocolBin `json:"by_speed"`
	Findings []Finding     `json:"findings"`
}

// ProtocolBin is the mean of the residuals between two speeds, over all pairs.
type ProtocolBin struct {
	From     *float64 `json:"from_mps"`
	To       *float64 `json:"to_mps"`
	Pairs    int      `json:"pairs"`
	Out      *float64 `json:"direction_plus_mps"`
	Back     *float64 `json:"direction_minus_mps"`
	Opposite Measured `json:"half_difference_mps"`
	Alike    Measured `json:"half_sum_mps"`
}

// ProtocolChange is the difference of two setups, b − a.
type ProtocolChange struct {
	A          string         `json:"a"`
	B          string         `json:"b"`
	CdA        Measured       `json:"delta_cda_m2"`
	Crr        Measured       `json:"delta_crr"`
	TakenBack  *float64       `json:"taken_back_m2"` // correction of CdA per unit difference in Crr
	WarmCdA    *float64       `json:"warmed_cda_m2"` // subtracted first, for tyres that warmed up in between
	WarmCrr    *float64       `json:"warmed_crr"`
	CI         *[2]float64    `json:"ci95_m2,omitempty"`
	P          *float64       `json:"p,omitempty"`
	Percent    *float64       `json:"delta_cda_pct,omitempty"`
	PercentCI  *[2]float64    `json:"delta_cda_ci95_pct,omitempty"`
	Budget     []ProtocolPart `json:"budget_m2"`
	Findings   []Finding      `json:"findings,omitempty"`
	BaseCdA    *float64       `json:"base_cda_m2"`
	InOneRide  bool           `json:"in_one_ride"`
	Recordings [2]int         `json:"rides"` // which of rides a and b were ridden in, from 0
}

// ProtocolRejected is a coast-down that is in no figure.
type ProtocolRejected struct {
	Run     int       `json:"run"`
	Setup   string    `json:"setup"`
	Reasons []Finding `json:"reasons"`
}

// WriteProtocol writes the protocol, indented so that a person can read it too.
func WriteProtocol(w io.Writer, p *Protocol) error { return encode(w, p) }
