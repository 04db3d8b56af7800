package platform

import (
	"errors"
	"time"
)

// Background keeps a recording going with the screen off or the app hidden,
// where a device can. The device shows a notification meanwhile.
type Background interface {
	// Begin returns once the system has agreed, or says why it does not. The app
	// must be visible. Called while it runs already, it changes what was asked
	// for: sound says that the microphone is wanted too.
	Begin(n Notification, sound bool) error
	// Show changes the notification.
	Show(n Notification) error
	// End lets the app be stopped again.
	End() error
	// Happenings gives what the rider or the system does to it meanwhile.
	Happenings() <-chan Happening
}

// ErrBackground is wrapped by what a Background answers where the device does
// not let it begin.
var ErrBackground = errors.New("the device does not let the app record in the background")

// Notification is what the device shows while it records. It holds no speed:
// nobody is to look at it while riding.
type Notification struct {
	Kind        string // what the device's settings call this kind of notification
	Title, Text string
	End         string // on the button that ends the ride
	Since       time.Time
}

// Happening is what happened to a Background.
type Happening string

// The happenings.
const (
	EndAsked Happening = "end asked" // with the notification's button
	SwipedUp Happening = "swiped up" // the app is gone from sight; recording continues
	CutShort Happening = "cut short" // the system ended it

)

// Obstacle is a setting of the device that would harm a recording, with the
// screen off or later.
type Obstacle string

// The obstacles.
const (
	Approximate     Obstacle = "approximate"      // of the location, which then has no speed
	NoNotifications Obstacle = "no notifications" // recording works, but cannot be ended from the notification
	SavingBattery   Obstacle = "saving battery"   // satellites stop with the screen off
	Restricted      Obstacle = "restricted"       // the app may not run in the background
	Clearable       Obstacle = "clearable"        // the system did not promise to keep the app's files
)

// Demise is why the app's process ended the last time.
type Demise string

// The ways a process ends. Unexplained stands for all that the rider can do
// nothing about.
const (
	ByMemory    Demise = "memory" // the system needed it
	ByRider     Demise = "rider"
	ByCrash     Demise = "crash"
	ByHanging   Demise = "hanging"
	ByLeave     Demise = "leave" // a permission was taken back
	ByPower     Demise = "power" // the system found that the app used too much
	ByUpdate    Demise = "update"
	Unexplained Demise = ""
)
