package text

// Effects is what a difference between two setups means on the road, and what
// limits how well it is known.
type Effects struct {
	Title, At, AirShare, PowerName, Slower, Faster                              string
	Longer, Shorter, FuelName, RangeName, RangeFrom                             string
	TopName, TopByPower, TopByGear, TopBeyond, Share, AboutFuel, FuelHow, NoTop string
	LimitTitle, LimitLead, LimitWords, LimitHint                                string
	Gusts, Wind, Receiver, Road, Slope, Mass, Air                               string
	GustsHelp, WindHelp, ReceiverHelp, RoadHelp, SlopeHelp                      string
	MassHelp, AirHelp, PowerTitle, TimesTitle, Which, WhichHint                 string
	Days, DaysHelp, Assumed, AssumedHelp, SameAir, Posture, PostureHelp         string
	WhichDone, WhichNone, DaysWeaker, Within, Reading, CannotDo                 string
}

// Plan is the planning of a test.
type Plan struct {
	Title, Lead, Open, What, Drag, TopSpeed, TopField, Faster, Wind string
	Winds                                                           [3]string
	WindHint, WindWords, From, To, Setups, Chance, Basis            string
	BasisUsual, Answer, AnswerNot, ChanceWords, Known, Smallest     string
	Road, Time, Order, Block, BlockOne, OrderHint, Help, HelpWith   string
	CannotPlan, AnswerOne, KnownOne, WholeOne                       string
	Card, CardHint, Like                                            string
	Calculating                                                     string
	Power, Times, Over, Unsteady, UnsteadyHint, Repeats             string
	RepeatsHint, RiddenCoasts, RiddenPulls, RiddenLaunches          string
	RiddenRollOns, BasisPower, BasisPowerUsual                      string
}

// Power is power at the road.
type Power struct {
	Title, Open, Lead, NoBench, Peak, PeakRPM, AtEnd, PullsOne, Pulls string
	SpeedAxis, RPMAxis, PowerAxis, Over, OverSpeed, OverRPM, NoRPM    string
	Correction, AsRidden, ToSAE, ToISO, Factor, FactorFar, NoFactor   string
	AirAssumed, Bandwidth, GearKnown, GearUnknown, Spoken             string
	RevsVibration, RevsSound, RevsBoth                                string
	PullTitle, SetupAs, StopTitle, StopRow, StopHint                  string
}
