package screens_test

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/text"
	"stillair/app/view"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/sensors/units"
)

// rideAnswered is the result page of a ride with two setups, just after it, when
// it also says how the recording ended.
func rideAnswered(s screens.Screens, res *runs.Result) fyne.CanvasObject {
	v := s.C.Ride(inventedSession(), res, rideSenses(), true)
	v.Saved = s.C.Ended(movingStatus())
	v.Answers = s.C.Answers(res, view.CompareAsk{Speed: 1, LimitRPM: math.Inf(1), Fuel: &store.Fuel{LitresPer100Km: 4.6, SpeedMPS: 100 * units.KMH}})
	return tabs(s, screens.PlaceResults, s.Ride(v, screens.RideActions{Back: nothing, Edit: nothing, Advice: nothing, Power: nothing, Compare: nothing,
		Run: func(int) {}, Load: func(int) {}}))
}

// inventedUnclear is the invented ride with panniers in gusts.
func inventedUnclear() *runs.Result {
	res := inventedCompared()
	res.Compared = res.Compared[:1]
	change := *res.Compared[0].Load
	change.CdA = val(0.02, 0.019)
	res.Compared[0].Load = &change
	res.Compared[0].CdA = &compare.Verdict{Finding: compare.CannotTell, Delta: change.CdA, Percent: 3.6, CIPercent: [2]float64{-4.4, 11.6}, MorePairs: 4,
		Next: compare.Next{Half: 7.1, Chance: 0.31}}
	return res
}

// place is the position of an object on the screen, the sum of its parents' positions.
func place(o fyne.CanvasObject, at fyne.Position, visit func(fyne.CanvasObject, fyne.Position)) {
	at = at.Add(o.Position())
	visit(o, at)
	var inner []fyne.CanvasObject
	switch x := o.(type) {
	case *fyne.Container:
		inner = x.Objects
	case fyne.Widget:
		inner = test.WidgetRenderer(x).Objects()
	}
	for _, i := range inner {
		place(i, at, visit)
	}
}

// TestAnswerIsSeenAtOnce checks that the first answer of a ride with two setups,
// with its effect at the rider's speed and on fuel, is fully visible on a small
// screen without scrolling, in every language.
func TestAnswerIsSeenAtOnce(t *testing.T) {
	test.NewTempApp(t)
	for _, book := range text.All() {
		for name, res := range map[string]*runs.Result{"clear": inventedCompared(), "not clear": inventedUnclear()} {
			t.Run(book.Tag+" "+name, func(t *testing.T) {
				_, o := draw(t, variant{w: 360, h: 640, book: book}, func(s screens.Screens) fyne.CanvasObject { return rideAnswered(s, res) })
				var bottom, answered float32
				place(o, fyne.NewPos(0, 0), func(x fyne.CanvasObject, at fyne.Position) {
					switch x := x.(type) {
					case *kit.Page:
						bottom = at.Y + x.Size().Height
					case *kit.Touch:
						if strings.Contains(x.AccessibilityLabel(), "95 %") && answered == 0 {
							answered = at.Y + x.Size().Height
							if !strings.Contains(x.AccessibilityLabel(), "kW") || !strings.Contains(x.AccessibilityLabel(), "l/100 km") {
								t.Errorf("it does not say what it means: %q", x.AccessibilityLabel())
							}
						}
					}
				})
				if answered == 0 || bottom == 0 || bottom > 640 || answered > bottom {
					t.Errorf("the answer ends at %.0f, the page at %.0f of 640", answered, bottom)
				}
			})
		}
	}
}
