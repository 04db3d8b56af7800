package platform

import (
	"errors"
	"time"
)

// Background keeps a recording running with the screen off or the app hidden,
// on devices that can. The device shows a notification meanwhile.
type Background interface {
	// Begin returns once the system has agreed, or an error with the reason if
	// it does not. The app must be visible. A second call changes the request:
	// sound says that the microphone is wanted too.
	Begin(n Notification, sound bool) error
	// Show changes the notification.
	Show(n Notification) error
	// End lets the app be stopped again.
	End() error
	// Happenings reports what the rider or the system does to it meanwhile.
	Happenings() <-chan Happening
}

// ErrBackground is wrapped by the errors of Begin when the device does not
// allow it.
var ErrBackground = errors.New("the device does not let the app record in the background")

// Notification is what the device shows while it records. It holds no speed:
// nobody should look at it while riding.
type Notification struct {
	Kind        string // what the device's settings call this kind of notification
	Title, Text string
	End         string // on the button that ends the ride
	Since       time.Time
}

// Happening is something that happened to a Background.
type Happening string

// The happenings.
const (
	EndAsked Happening = "end asked" // with the notification's button
	SwipedUp Happening = "swiped up" // the app was removed from the list of recent apps; recording continues
	CutShort Happening = "cut short" // the system ended it

)

// Obstacle is a setting of the device that would interrupt a recording, with
// the screen off or later.
type Obstacle string

// The obstacles.
const (
	Approximate     Obstacle = "approximate"      // only the approximate location is allowed, which comes without speed
	NoNotifications Obstacle = "no notifications" // recording works, but cannot be ended from the notification
	SavingBattery   Obstacle = "saving battery"   // GPS stops with the screen off
	Restricted      Obstacle = "restricted"       // the app may not run in the background
	Clearable       Obstacle = "clearable"        // the system did not promise to keep the app's files
)

// Demise is the reason why the app's process last ended.
type Demise string

// The ways a process ends. Unexplained covers everything that the rider cannot
// change.
const (
	ByMemory    Demise = "memory" // the system needed it
	ByRider     Demise = "rider"
	ByCrash     Demise = "crash"
	ByHanging   Demise = "hanging"
	ByLeave     Demise = "leave" // a permission was taken back
	ByPower     Demise = "power" // the system found that the app used too much power
	ByUpdate    Demise = "update"
	Unexplained Demise = ""
)
