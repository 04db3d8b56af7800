package accessible_test

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"stillair/app/accessible"
	"stillair/app/screens/kit"
)

// names lists what is read, with a star for what can be pressed.
func names(things []accessible.Thing) (out []string) {
	for _, t := range things {
		n := t.Name
		switch t.Role {
		case accessible.Button:
			n += "*"
		case accessible.TextBox:
			n += "=" + t.Value + "(" + t.Note + ")"
		}
		out = append(out, n)
	}
	return out
}

// box has a label for all its parts, unless that is empty.
type box struct {
	widget.BaseWidget
	words string
	role  fyne.AccessibleRole
	inner fyne.CanvasObject
}

func newBox(words string, role fyne.AccessibleRole, inner ...fyne.CanvasObject) *box {
	b := &box{words: words, role: role, inner: container.NewVBox(inner...)}
	b.ExtendBaseWidget(b)
	return b
}

func (b *box) AccessibilityLabel() string             { return b.words }
func (b *box) AccessibilityRole() fyne.AccessibleRole { return b.role }
func (b *box) Parts() []fyne.CanvasObject             { return []fyne.CanvasObject{b.inner} }
func (b *box) CreateRenderer() fyne.WidgetRenderer    { return widget.NewSimpleRenderer(b.inner) }

func TestThings(t *testing.T) {
	test.NewTempApp(t)
	label := func(s string) fyne.CanvasObject { return widget.NewLabel(s) }
	hidden := widget.NewLabel("hidden")
	hidden.Hide()
	k := kit.New(kit.Light(), 1)
	entry := k.Field(kit.Field{Name: "Mass", Example: "290"})
	filled := k.Field(kit.Field{Name: "Weight", Text: "290", Unit: "kg", Hint: "as ridden", Fault: "too much"})
	for _, c := range []struct {
		name string
		root fyne.CanvasObject
		want []string
	}{
		{"in order", container.NewVBox(label("one"), widget.NewButton("two", nil), label("three")), []string{"one", "two*", "three"}},
		{"a whole speaks for its parts", newBox("the whole", fyne.AccessibleRoleText, label("a"), label("b")), []string{"the whole"}},
		{"a whole without words lets them speak", newBox("", fyne.AccessibleRoleContainer, label("a"), label("b")), []string{"a", "b"}},
		{"what can be pressed is read in any case", newBox("card", fyne.AccessibleRoleText, label("a"), widget.NewButton("more", nil)),
			[]string{"card", "more*"}},
		{"a button speaks for its words", newBox("go", fyne.AccessibleRoleButton, label("go now")), []string{"go*"}},
		{"hidden", container.NewVBox(label("seen"), hidden), []string{"seen"}},
		{"a field, which says its name once", container.NewVBox(label("before"), entry), []string{"before", "Mass=()"}},
		{"a field with a value and all there is to say", container.NewVBox(filled), []string{"Weight=290(kg. too much. as ridden)", "kg", "too much", "as ridden"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := test.NewTempWindow(t, c.root)
			w.Resize(fyne.NewSize(300, 500))
			if got := names(accessible.Things(w.Canvas().Content())); !slices.Equal(got, c.want) {
				t.Errorf("read %q, want %q", got, c.want)
			}
		})
	}
}

func TestScrolledOutOfSight(t *testing.T) {
	test.NewTempApp(t)
	list := container.NewVBox()
	for _, s := range []string{"a", "b", "c", "d", "e", "f", "g", "h"} {
		list.Add(widget.NewButton(s, nil))
	}
	scroll := container.NewVScroll(list)
	w := test.NewTempWindow(t, scroll)
	w.Resize(fyne.NewSize(200, 120))
	top := accessible.Things(w.Canvas().Content())
	if len(top) == 0 || len(top) == 8 || top[0].Name != "a" {
		t.Fatalf("read %q", names(top))
	}
	scroll.ScrollToBottom()
	bottom := accessible.Things(w.Canvas().Content())
	if last := bottom[len(bottom)-1]; last.Name != "h" || bottom[0].Name == "a" {
		t.Errorf("scrolled down, read %q", names(bottom))
	}
	for _, b := range bottom {
		if b.Pos.Y+b.Size.Height/2 > 130 {
			t.Errorf("%s lies at %v, out of sight", b.Name, b.Pos)
		}
	}
}
