package shell

import (
	"fmt"

	"fyne.io/fyne/v2"

	"stillair/app/screens"
	"stillair/app/screens/kit"
)

// showing makes one screen.
type showing func() *kit.Page

// nav is where the rider is in the app. Each place has a stack of screens; the
// last is shown.
type nav struct {
	place  screens.Place
	stacks [5][]showing
	page   *kit.Page // the page shown, if it scrolls
	undo   func()    // the action of the bar above the tabs; nil: no bar
}

// begin puts the first screen of each place on its stack.
func (n *nav) begin(first ...showing) {
	for i, f := range first {
		n.stacks[i] = []showing{f}
	}
}

// top is the screen that belongs on the screen.
func (n *nav) top() showing {
	stack := n.stacks[n.place]
	return stack[len(stack)-1]
}

// home goes back to the first screen of a place.
func (n *nav) home(p screens.Place) { n.cut(p, 1) }

// cut leaves at most the first few screens of a place.
func (n *nav) cut(p screens.Place, most int) {
	most = min(most, len(n.stacks[p]))
	n.stacks[p] = n.stacks[p][:most:most]
}

// pop takes the top screen off. It reports false where it is the only one.
func (n *nav) pop() bool {
	stack := n.stacks[n.place]
	if len(stack) < 2 {
		return false
	}
	n.stacks[n.place] = stack[: len(stack)-1 : len(stack)-1]
	return true
}

// put puts a screen on top.
func (n *nav) put(f showing) { n.stacks[n.place] = append(n.stacks[n.place], f) }

// show draws what belongs on the screen now.
func (s *Shell) show() {
	if s.rec != nil {
		s.showRiding()
		return
	}
	s.page = s.top()()
	var bar fyne.CanvasObject
	if s.undo != nil {
		bar = s.screen.UndoBar(s.screen.C.Book.Rides.Deleted, s.undo)
	}
	s.set(s.screen.WithTabs(s.page, s.place, s.goTo, bar))
}

// again draws the same screen again and keeps where it was scrolled to.
func (s *Shell) again() {
	y := float32(0)
	if s.page != nil {
		y = s.page.Scrolled()
	}
	s.show()
	if s.page != nil && s.rec == nil {
		s.page.ScrollTo(y)
	}
}

func (s *Shell) set(o fyne.CanvasObject) {
	s.screen.Kit.LetGo()
	s.root.Objects = []fyne.CanvasObject{o}
	s.root.Refresh()
	s.tellDepth()
}

// goTo opens a place of the bar; the place where one is goes back to its
// first screen.
func (s *Shell) goTo(p screens.Place) {
	if p == s.place {
		s.home(p)
	}
	s.place, s.undo = p, nil
	s.announce(p)
	s.show()
}

func (s *Shell) announce(p screens.Place) {
	if s.dev.Announce == nil {
		return
	}
	t := s.screen.C.Book
	s.dev.Announce([]string{t.Ready.Title, t.Rides.Title, t.Bikes.Title, t.Compare.Title, t.More.Title}[p])
}

// announceResults lets a screen reader say that the measuring is done.
func (s *Shell) announceResults() {
	if s.dev.Announce == nil {
		return
	}
	if s.opened.err != nil {
		s.dev.Announce(s.whyFailed(s.opened.err))
		return
	}
	v := s.screen.C.Ride(s.opened.ses, s.opened.res, s.opened.senses, s.opened.coarse)
	words := s.screen.C.Book.Ride.RunsTitle + ":"
	for _, r := range v.Runs {
		words += " " + r.Spoken + "."
	}
	s.dev.Announce(words)
}

// push shows a screen on top of the one that is shown.
func (s *Shell) push(f showing) {
	s.put(f)
	s.undo = nil
	s.show()
}

// replace shows a screen instead of the one that is shown.
func (s *Shell) replace(f showing) {
	s.pop()
	s.put(f)
	s.show()
}

// back shows the screen below. It reports false where there is none.
func (s *Shell) back() bool {
	if s.rec != nil || !s.pop() {
		return false
	}
	s.show()
	return true
}

func (s *Shell) goBack() { s.back() }

// words are errors as the rider reads them.
func (s *Shell) words(errs []error) []string {
	var out []string
	for _, err := range errs {
		out = append(out, fmt.Sprintf(s.screen.C.Book.Trouble.NewerFile, s.screen.C.Error(err)))
	}
	return out
}
