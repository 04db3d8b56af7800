package device

import (
	"fmt"
	"time"

	"stillair/app/platform"
	"stillair/sensors/device/android"
)

// background is android.Service in the words of package platform.
type background struct {
	service *android.Service
	happens chan platform.Happening
}

func newBackground() background {
	b := background{android.NewService(native, time.After), make(chan platform.Happening)}
	go b.pass()
	return b
}

// pass passes on what happens, for as long as the app lives.
func (b background) pass() {
	for h := range b.service.Events() {
		switch h {
		case android.EndAsked:
			b.happens <- platform.EndAsked
		case android.Swiped:
			b.happens <- platform.SwipedUp
		case android.Gone:
			b.happens <- platform.CutShort
		}
	}
}

func notice(n platform.Notification) android.Notice {
	return android.Notice{Channel: n.Kind, Title: n.Title, Text: n.Text, End: n.End, Since: n.Since}
}

func (b background) Begin(n platform.Notification, sound bool) error {
	if err := b.service.Begin(notice(n), sound); err != nil {
		return fmt.Errorf("%w: %w", platform.ErrBackground, err)
	}
	return nil
}
func (b background) Show(n platform.Notification) error    { return b.service.Show(notice(n)) }
func (b background) End() error                            { return b.service.End() }
func (b background) Happenings() <-chan platform.Happening { return b.happens }

// obstacles reads the phone's settings. What it does not tell is not an obstacle.
func obstacles() (all []platform.Obstacle) {
	s, err := android.ReadSettings(native)
	if err != nil {
		return nil
	}
	if s.Approximate {
		all = append(all, platform.Approximate)
	}
	if s.Restricted {
		all = append(all, platform.Restricted)
	}
	if s.ScreenOff {
		all = append(all, platform.SavingBattery)
	}
	if !s.Notifications {
		all = append(all, platform.NoNotifications)
	}
	return all
}

// lit reports whether the screen is on.
func lit() bool {
	s, err := android.ReadSettings(native)
	return err == nil && s.Lit
}

// lastEnd translates what Android tells of the process before this one.
func lastEnd() platform.Demise {
	e, err := android.LastExit(native)
	if err != nil {
		return platform.Unexplained
	}
	switch e {
	case android.ExitMemory:
		return platform.ByMemory
	case android.ExitCrash, android.ExitNative:
		return platform.ByCrash
	case android.ExitHung:
		return platform.ByHanging
	case android.ExitLeave:
		return platform.ByLeave
	case android.ExitExcessive:
		return platform.ByPower
	case android.ExitAsked, android.ExitStopped:
		return platform.ByRider
	case android.ExitUpdated:
		return platform.ByUpdate
	}
	return platform.Unexplained
}
