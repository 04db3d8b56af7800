package text

// Bikes is bikes and setups.
type Bikes struct {
	Title, Empty, EmptyHint, New, Edit, Name, NameHint, Mass, MassHint, MassSD, MassSDHint string
	Weighed, WeighedHint, Rotating, RotatingHint, Gears, GearsHint, AddGear                string
	GearSpeed, SetupsHint, AddSetup, NewSetup, SetupName, SetupNameHint, Changed           string
	ChangedHint, SetupMass, SetupMassHint, TyreFront, TyreRear, Note, Remove, RemoveHint   string
	NoMass, NotNumber, OutOfRange, NoName, Twice, Choose, Optional, EditSetup              string
}

// Guide is the guided first coast-down.
type Guide struct {
	Title, Step                             string // "%d of %d"
	WhatTitle, What, RoadTitle, Road        string
	BothTitle, Both, DoTitle                string
	Do                                      [5]string
	StopTitle, Stop, AfterTitle, After      string
	Caution, Ready, PictureAir, PictureRoll string
	PictureThere, PictureBack               string
}

// Advice is what the guide says after the ride.
type Advice struct {
	Title, Good, GoodHint, None, NoneHint                                            string
	PairsDone, OnePair, Unpaired, OneUnpaired, UnpairedHint, MoreWorth, OneMoreWorth string
	MoreNot, WentWrong, DoBetter, ShortBetter, BrakeBetter                           string
	EngineBetter, SlopeBetter, FixBetter, TurnBetter, OtherBetter                    string
}

// More is the choices and what the app says about itself.
type More struct {
	Title, Units, Metric, Imperial, Language, Look, LookSystem, LookLight, LookDark string
	TextSize, TextNormal, TextLarge, TextLargest, Aloud, AloudHint, On, Off         string
	AirTitle, AirHint, Temperature, Pressure, Humidity, Wind                        string
	SafetyTitle, Safety, PrivacyTitle, Privacy, AboutTitle, About, PaletteNote      string
	GuideAgain, AccuracyTitle, Accuracy, System                                     string
}
