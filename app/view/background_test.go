package view

import (
	"errors"
	"strings"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/app/text"
)

// TestNotificationSaysNoSpeed: nobody should look at it while riding.
func TestNotificationSaysNoSpeed(t *testing.T) {
	for _, book := range text.All() {
		c := Context{Book: book}
		n := c.Notification(recorder.Status{Phase: recorder.Moving, Speed: 27, Distance: 1234, Kept: recorder.Kept{Free: -1}}, time.Unix(0, 0))
		if all := n.Kind + n.Title + n.Text + n.End; strings.ContainsAny(all, "0123456789") || n.Text != book.Background.Well {
			t.Errorf("%s: %+v", book.Tag, n)
		}
		n = c.Notification(recorder.Status{Kept: recorder.Kept{Err: errors.New("disk"), Free: -1}}, time.Unix(0, 0))
		if n.Text != book.Trouble.StorageFails {
			t.Errorf("%s: of a storage that fails it says %q", book.Tag, n.Text)
		}
	}
}

func TestObstaclesWorstFirst(t *testing.T) {
	c := Context{Book: text.English()}
	lines := c.Obstacles([]platform.Obstacle{platform.NoNotifications, platform.Restricted, platform.SavingBattery, platform.Approximate})
	var titles []string
	for _, l := range lines {
		titles = append(titles, l.Title)
		if l.Ask != (l.Title == c.Book.Background.NoNotifications) {
			t.Errorf("%s: can be asked for %v", l.Title, l.Ask)
		}
	}
	if got := strings.Join(titles, "; "); got != "Only the approximate location is allowed; This app may not run in the background; Battery Saver switches the satellites off; Notifications are off" {
		t.Errorf("said %s", got)
	}
}

func TestEveryDemiseIsPutInWords(t *testing.T) {
	c := Context{Book: text.German()}
	for _, d := range []platform.Demise{platform.ByMemory, platform.ByRider, platform.ByCrash, platform.ByHanging, platform.ByLeave, platform.ByPower, platform.ByUpdate} {
		if c.Demise(d) == "" {
			t.Errorf("nothing is said of %s", d)
		}
	}
	if s := c.Demise(platform.Unexplained); s != "" {
		t.Errorf("of what is not known it says %q", s)
	}
}
