package text

// Common is used on several screens.
type Common struct {
	Back, Next, Save, Undo, Close                      string
	TabRide, TabResults, TabBikes, TabCompare, TabMore string
	Unknown                                            string
	Minutes, Hours, Seconds                            string // "%d min", "%d h %02d min", "%s s"
	PlusMinus                                          string // what ± means
	Invented                                           string // next to demo data
}

// Ready is the screen before the ride.
type Ready struct {
	Title, BikeNone, BikeNoneHint, SetupNone, Mass string
	PhoneTitle, CheckTitle, CheckCount             string
	Place, PlaceWhy                                string
	Law, LawWhy                                    string
	Traffic, TrafficWhy                            string
	Weather, WeatherWhy                            string
	Tyres, TyresWhy                                string
	Fixed, FixedWhy                                string
	Start, StartRough, StartGood, Permit           string
	FirstTime, FirstTimeHint                       string
}

// Senses says how the sensors and the storage do.
type Senses struct {
	Satellites, Motion, Turn, Storage                                   string
	FixGood, FixFair, FixWait                                           string // "%s m, %s a second"
	MotionGood, MotionCoarse, MotionWait, MotionSilent, FixSilent       string // "%s a second"
	MotionFew, FixFew                                                   string // "%s a second", "%s s"
	NoMotion, NoFix                                                     string // what is not possible without them
	PressureGood, PressureNone                                          string
	Asking, DeniedFix, DeniedMotion                                     string
	MissingFix, MissingMotion, MissingTurn                              string
	StorageGood, StoragePlenty, StorageLow, StorageFull, StorageUnknown string // "%s"
	Gaps, OneGap, NoGaps, Rate, Clocks, LagFound, LagAssumed            string
	LagLive, Smoothing                                                  string
}

// Riding is the screen while the recorder runs.
type Riding struct {
	Locked, Standing, Searching, NoSpeed                       string
	Recorded, Safe, Unsafe                                     string // "%s"
	NoticedTitle, NothingYet                                   string
	SawLaunch, SawRollOn, SawCoast, SawStop                    string // from, to, unit
	LastTitle, LastNone, Say, Setup, End                       string
	Closed, ClosedStood, ClosedNever, ClosedSource, ClosedRoom string
	ClosedTorn                                                 string
	Copy, CopyApp, CopyKept, CopyClearable                     string
	SpokenLaunch, SpokenCoast                                  string
	SoFarTitle, NextDone, NextWorth, NextNot, NextHardly       string // tenths, ± now and then
	WeightAsk, WeightSame, WeightOther, WeightField            string // setup
}

// Trouble is what can go wrong, and what still works.
type Trouble struct {
	Recovered, RecoveredHint, RecoveredDamaged                       string // "%s"
	Busy, NoRoom, StorageFails, StorageLost, CannotRead              string
	CannotRecord                                                     string // "%s"
	SensorsFailed, AnalysisFailed, NoRide, NewerFile, ScreenMayGoOff string
	ShareFailed                                                      string
}
