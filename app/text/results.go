package text

// Rides is the list of recordings.
type Rides struct {
	Title, Empty, EmptyHint, CutOff, Deleted                                      string
	Launches, RollOns, CoastDowns, Pairs, OneLaunch                               string
	OneRollOn, OneCoastDown, OnePair, NotAnalysed, Demo, DemoName                 string
	Name, NamePlaceholder, Note, Edit, Share, ShareRide                           string
	ShareResults, ShareAway, ShareAwayHint, ShareHint, Delete, DeleteHint, Length string
	SharePositions, NothingFound                                                  string
}

// Ride is the results of one recording.
type Ride struct {
	Analysing, RunsTitle, RejectedTitle, CoarseTiming string
	Pairs, OnePair                                    string
	NoPairs, NoRuns, NoRunsHint, NotesTitle           string
	NoPair, Towards, From                             string
	Compass                                           [8]string
}

// Run is one run with its curve.
type Run struct {
	TimeAxis, Measured, Fitted, MarksTitle      string
	FromMoving, AfterFoot, FootHint, SpeedThere string
	Cautions, WhyNot, Residual                  string
	StillKept, PullHint, StopCaution            string
}

// Load is the coast-downs of a setup together.
type Load struct {
	AllRuns, DragMeans, RollingMeans                      string
	SureOf, PowerNeeded                                   string
	RollScale, CurvesHint, MoreTitle, MorePairs, MorePair string
	EnoughPairs, OnlyOne, ShareTitle, Notes               string
	Setup, SinceSpeed, AirShare, RollShare                string
	Assumed                                               string
}

// Compare is the place of the comparison of setups.
type Compare struct {
	Title, Empty, EmptyHint, HowTitle, How1, How2, How3, How4 string
	Scale, Against, Delta                                     string
	MoreBy, LessBy, MoreDrag, LessDrag, MorePower, LessPower  string
	NoneMatters, NotClear, NeverClear                         string // shown in place of a size
	Sure, Estimate, MorePairs, OneMorePair, CalmerDay         string // its certainty
}
