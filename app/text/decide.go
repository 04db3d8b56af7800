package text

// Effects is what a difference between two setups means on the road, and what
// limits how well it is known.
type Effects struct {
	Title, At, AirShare, PowerName, Slower, Faster                     string
	Longer, Shorter, FuelName, RangeName, RangeFrom                    string
	TopByPower, TopByGear, TopBeyond, Share, AboutFuel, FuelHow, NoTop string
	LimitLead, LimitWords, LimitHint, SameAir                          string
	TimesTitle, Which, WhichHint, WhichDone, WhichNone                 string
	Within, Reading, CannotDo                                          string
}

// Plan is the planning of a test.
type Plan struct {
	Title, Lead, Open, What, TopField, Faster, Wind                         string
	Winds                                                                   [3]string
	WindHint, WindWords, From, To, Setups, Chance, Basis                    string
	BasisUsual, Answer, AnswerNot, ChanceWords, ChanceDays, Known, Smallest string
	Road, Time, Order, Block, BlockOne, OrderHint, Help, HelpWith           string
	CannotPlan, AnswerOne, KnownOne, WholeOne                               string
	Card, CardHint, Like                                                    string
	Calculating                                                             string
	Times, Over, Unsteady, UnsteadyHint, Repeats                            string
	RepeatsHint, RiddenCoasts, RiddenPulls, RiddenLaunches                  string
	RiddenRollOns, BasisPower, BasisPowerUsual                              string
}

// Power is power at the road.
type Power struct {
	Open, Peak, PeakRPM, AtEnd, PullsOne, Pulls, RPMAxis string
	Over, OverSpeed, OverRPM, NoRPM                      string
	Correction, ToSAE, ToISO, Factor, NoFactor           string
	AirAssumed, Bandwidth, GearUnknown, Spoken, RevsFrom string // RevsFrom: what shows it
	PullTitle, StopTitle, StopRow, StopHint              string
}
