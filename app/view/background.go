package view

import (
	"time"

	"stillair/app/platform"
	"stillair/app/recorder"
)

// Notification is what the phone shows while it records: any trouble, and never
// a speed. began is the time of day at the start.
func (c Context) Notification(s recorder.Status, began time.Time) platform.Notification {
	t := c.Book.Background
	n := platform.Notification{Kind: t.Kind, Title: t.Title, Text: t.Well, End: t.End, Since: began}
	if w := c.rideWarnings(s); len(w) > 0 {
		n.Text = w[0]
	}
	return n
}

// ObstacleLine is a setting of the phone that would interrupt recording with
// the screen off; Ask says that the app can ask the phone to change it.
type ObstacleLine struct {
	Title, Words string
	Ask          bool
}

// Obstacles puts the obstacles into words, the worst first.
func (c Context) Obstacles(all []platform.Obstacle) (lines []ObstacleLine) {
	t := c.Book.Background
	for _, x := range []struct {
		obstacle platform.Obstacle
		line     ObstacleLine
	}{
		{platform.Approximate, ObstacleLine{t.Approximate, t.ApproximateHint, false}},
		{platform.Restricted, ObstacleLine{t.Restricted, t.RestrictedHint, false}},
		{platform.SavingBattery, ObstacleLine{t.Saving, t.SavingHint, false}},
		{platform.Clearable, ObstacleLine{t.Clearable, t.ClearableHint + " " + c.Book.Ways.Install[c.Machine], false}},
		{platform.NoNotifications, ObstacleLine{t.NoNotifications, t.NoNotificationsHint, true}},
	} {
		for _, o := range all {
			if o == x.obstacle {
				lines = append(lines, x.line)
			}
		}
	}
	return lines
}

// Demise says why the app last ended; empty if that is not known.
func (c Context) Demise(d platform.Demise) string {
	t := c.Book.Background
	return map[platform.Demise]string{
		platform.ByMemory: t.ByMemory, platform.ByRider: t.ByRider, platform.ByCrash: t.ByCrash, platform.ByHanging: t.ByHanging,
		platform.ByLeave: t.ByLeave, platform.ByPower: t.ByPower, platform.ByUpdate: t.ByUpdate,
	}[d]
}
