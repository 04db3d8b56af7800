package results

import "time"

// Document is the whole of the results. Pointers are nil where a number was
// not measured or does not apply.
type Document struct {
	Version         int          `json:"version"`
	Bike            string       `json:"bike,omitempty"`
	Started         string       `json:"started,omitempty"` // RFC 3339, where it may be disclosed
	Invented        bool         `json:"invented,omitempty"`
	GNSSLag         *float64     `json:"gnss_lag_s,omitempty"`
	GNSSLagSE       *float64     `json:"gnss_lag_se_s,omitempty"`
	GNSSLagAssumed  bool         `json:"gnss_lag_assumed,omitempty"` // it could not be estimated from the ride
	GNSSSmoothing   *float64     `json:"gnss_smoothing_s,omitempty"` // time constant of the receiver's own smoothing
	GNSSSmoothingSE *float64     `json:"gnss_smoothing_se_s,omitempty"`
	Defaults        []string     `json:"defaults"`           // fields of ride.json whose default was used
	Warnings        []string     `json:"warnings,omitempty"` // about the ride as a whole
	Notes           []string     `json:"notes,omitempty"`    // what was left out of the log or repaired
	Findings        []Finding    `json:"findings,omitempty"` // warnings and notes
	Runs            []Run        `json:"runs"`
	Passes          []Pass       `json:"passes,omitempty"` // the same road both ways at a steady speed
	RoadLoad        []RoadLoad   `json:"road_load"`
	Comparisons     []Comparison `json:"comparisons"`
	Power           []Power      `json:"power"`
}

// Began returns when the ride began, or the zero time.
func (d *Document) Began(t time.Time) {
	if d.Started = ""; !t.IsZero() {
		d.Started = t.UTC().Format(time.RFC3339)
	}
}

// Run is one thing that the rider did.
type Run struct {
	ID         int       `json:"id"`
	Kind       string    `json:"kind"`
	Start      *float64  `json:"start_s,omitempty"`
	End        *float64  `json:"end_s,omitempty"`
	BearingDeg *float64  `json:"bearing_deg,omitempty"`
	Setup      string    `json:"setup"`
	Gear       string    `json:"gear,omitempty"` // of a roll-on or pull, if known
	Accepted   bool      `json:"accepted"`
	Reasons    []string  `json:"reasons"` // why it is rejected; empty if accepted
	Cautions   []string  `json:"cautions,omitempty"`
	Findings   []Finding `json:"findings,omitempty"` // reasons and cautions
	Pair       int       `json:"pair,omitempty"`     // number of the pair of opposite coast-downs
	From       *float64  `json:"from_mps,omitempty"`
	To         *float64  `json:"to_mps,omitempty"`
	Marks      []Mark    `json:"marks,omitempty"`
	Engine     *Engine   `json:"engine,omitempty"`
}

// Engine is what is known of the engine speed in a pull; T, RPM and SE are
// parallel, and from the engine's own lines.
type Engine struct {
	From      string    `json:"from"`
	Gear      string    `json:"gear,omitempty"`
	RPMPerMPS *float64  `json:"rpm_per_mps,omitempty"`
	T         []float64 `json:"t_s,omitempty"`
	RPM       []float64 `json:"rpm,omitempty"`
	SE        []float64 `json:"rpm_se,omitempty"`
}

// Mark is one time, distance or speed measured in a run.
type Mark struct {
	Mark       string   `json:"mark"`
	Time       *float64 `json:"s,omitempty"` // from first movement, or from the first speed of a pair
	TimeSE     *float64 `json:"se_s,omitempty"`
	Rollout    *float64 `json:"rollout_s,omitempty"` // from 0.3048 m after first movement
	RolloutSE  *float64 `json:"rollout_se_s,omitempty"`
	Speed      *float64 `json:"speed_mps,omitempty"`
	SpeedSE    *float64 `json:"speed_se_mps,omitempty"`
	Distance   *float64 `json:"distance_m,omitempty"`
	DistanceSE *float64 `json:"distance_se_m,omitempty"`
}

// RoadLoad is the road load of a setup.
type RoadLoad struct {
	Setup string      `json:"setup"`
	Pairs int         `json:"pairs"`
	Runs  []int       `json:"runs"`
	Mass  *float64    `json:"mass_kg,omitempty"`
	CdA   *float64    `json:"cda_m2,omitempty"`
	CdASE *float64    `json:"cda_se_m2,omitempty"`
	CdACI *[2]float64 `json:"cda_ci95_m2,omitempty"`
	Crr   *float64    `json:"crr,omitempty"`
	CrrSE *float64    `json:"crr_se,omitempty"`
	CrrCI *[2]float64 `json:"crr_ci95,omitempty"`
	// The two parts of the standard errors: from noise, and from assumptions.
	CdANoise   *float64       `json:"cda_noise_se_m2,omitempty"`
	CdAAssumed *float64       `json:"cda_assumed_se_m2,omitempty"`
	CrrNoise   *float64       `json:"crr_noise_se,omitempty"`
	CrrAssumed *float64       `json:"crr_assumed_se,omitempty"`
	Budget     []ProtocolPart `json:"cda_budget_m2,omitempty"` // the components of cda_se_m2
	Cov        *float64       `json:"cda_crr_cov,omitempty"`   // m²
	DoF        *float64       `json:"dof,omitempty"`           // degrees of freedom of the intervals
	AirDensity *float64       `json:"air_density_kgpm3,omitempty"`
	A          *float64       `json:"a_n,omitempty"` // at the standard's reference conditions
	ASE        *float64       `json:"a_se_n,omitempty"`
	C          *float64       `json:"c_n_per_mps2,omitempty"`
	CSE        *float64       `json:"c_se_n_per_mps2,omitempty"`
	Notes      []string       `json:"notes,omitempty"`
	Findings   []Finding      `json:"findings,omitempty"`
}

// Comparison is the difference of two setups, b − a.
type Comparison struct {
	A          string      `json:"a"`
	B          string      `json:"b"`
	DeltaCdA   *float64    `json:"delta_cda_m2,omitempty"`
	SE         *float64    `json:"se_m2,omitempty"`
	CI         *[2]float64 `json:"ci95_m2,omitempty"`
	P          *float64    `json:"p,omitempty"`
	DeltaCrr   *float64    `json:"delta_crr,omitempty"`
	DeltaCrrSE *float64    `json:"delta_crr_se,omitempty"`
	Verdict    string      `json:"verdict"`
	Finding    string      `json:"finding,omitempty"` // of the drag area: differs, no difference shown, cannot tell yet
	Percent    *float64    `json:"delta_cda_pct,omitempty"`
	PercentCI  *[2]float64 `json:"delta_cda_ci95_pct,omitempty"`
	Others     []Judged    `json:"others,omitempty"`
	Notes      []string    `json:"notes,omitempty"`
	Findings   []Finding   `json:"findings,omitempty"` // the verdict on drag, and notes
}

// Judged is the difference of two setups in anything but drag area, b − a.
type Judged struct {
	Quantity  string      `json:"quantity"` // rolling resistance, power, or the name of a mark
	Finding   string      `json:"finding"`
	P         *float64    `json:"p,omitempty"`
	Percent   *float64    `json:"delta_pct,omitempty"`
	PercentCI *[2]float64 `json:"delta_ci95_pct,omitempty"`
}

// Power is the power at the road of one setup in one gear: parallel arrays.
type Power struct {
	Run        int       `json:"run"`            // the first of the pulls
	Runs       []int     `json:"runs,omitempty"` // all of them
	Setup      string    `json:"setup"`
	Gear       string    `json:"gear,omitempty"`
	RPMFrom    string    `json:"rpm_from,omitempty"` // source of the engine speed
	RPM        []float64 `json:"rpm,omitempty"`
	Speed      []float64 `json:"speed_mps"`
	Power      []float64 `json:"power_w"`
	PowerSE    []float64 `json:"power_se_w"`
	Correction *float64  `json:"correction,omitempty"` // factor of SAE J1349 to standard air, not applied
	Notes      []string  `json:"notes,omitempty"`
	Findings   []Finding `json:"findings,omitempty"`
}
