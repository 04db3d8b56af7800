package screens_test

import (
	"bytes"
	"reflect"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"github.com/go-text/typesetting/font"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/text"
)

// lacking lists the characters of a text that the app's font lacks. A browser
// has no other font, and one of the system would make the pictures differ.
func lacking(t *testing.T, k kit.Kit, style fyne.TextStyle, words string) (out []string) {
	t.Helper()
	face, err := font.ParseTTF(bytes.NewReader(k.Theme().Font(style).Content()))
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range words {
		if _, ok := face.NominalGlyph(r); !ok && r != '\n' {
			out = append(out, string(r))
		}
	}
	return out
}

// TestEverySignOfTheBooks checks each character of each text in each language.
func TestEverySignOfTheBooks(t *testing.T) {
	k := kit.New(kit.Light(), 1)
	for _, b := range text.All() {
		var words bytes.Buffer
		gather(&words, reflect.ValueOf(*b))
		if words.Len() < 10_000 {
			t.Fatalf("%s: only %d bytes of text seen", b.Tag, words.Len())
		}
		for _, style := range []fyne.TextStyle{{}, {Bold: true}} {
			if signs := lacking(t, k, style, words.String()); len(signs) > 0 {
				t.Errorf("%s, bold %v: the font lacks %q", b.Tag, style.Bold, signs)
			}
		}
	}
}

func TestASignTheFontLacksIsSeen(t *testing.T) {
	if got := lacking(t, kit.New(kit.Light(), 1), fyne.TextStyle{}, "a−你"); len(got) != 1 || got[0] != "你" {
		t.Errorf("lacking: %q", got)
	}
}

// gather collects every string within v.
func gather(to *bytes.Buffer, v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		to.WriteString(v.String())
	case reflect.Struct:
		for i := range v.NumField() {
			gather(to, v.Field(i))
		}
	case reflect.Array, reflect.Slice:
		for i := range v.Len() {
			gather(to, v.Index(i))
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			gather(to, key)
			gather(to, v.MapIndex(key))
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			gather(to, v.Elem())
		}
	}
}

// everySignIsOurs compares what a screen draws with the font, numbers included.
func everySignIsOurs(t *testing.T, s screens.Screens, o fyne.CanvasObject) {
	t.Helper()
	drawn := map[bool]string{}
	walk(o, func(x fyne.CanvasObject) {
		if x, ok := x.(*canvas.Text); ok {
			drawn[x.TextStyle.Bold] += x.Text
		}
	})
	for bold, words := range drawn {
		if signs := lacking(t, s.Kit, fyne.TextStyle{Bold: bold}, words); len(signs) > 0 {
			t.Errorf("bold %v: the font lacks %q", bold, signs)
		}
	}
}
