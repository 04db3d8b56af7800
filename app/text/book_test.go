package text

import (
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var verb = regexp.MustCompile(`%[0-9]*[a-z%]`)

// texts gives every text of a book by its path.
func texts(b *Book) map[string]string {
	out := map[string]string{}
	var walk func(path string, v reflect.Value)
	walk = func(path string, v reflect.Value) {
		switch v.Kind() {
		case reflect.String:
			out[path] = v.String()
		case reflect.Struct:
			for i := range v.NumField() {
				if v.Type().Field(i).IsExported() {
					walk(path+"."+v.Type().Field(i).Name, v.Field(i))
				}
			}
		case reflect.Array:
			for i := range v.Len() {
				walk(path+"."+string(rune('0'+i)), v.Index(i))
			}
		}
	}
	walk("", reflect.ValueOf(*b))
	return out
}

func TestNoTextIsMissing(t *testing.T) {
	for _, b := range All() {
		all := texts(b)
		if len(all) < 200 {
			t.Fatalf("%s: only %d texts seen: the test does not see them", b.Tag, len(all))
		}
		for path, s := range all {
			if strings.TrimSpace(s) == "" {
				t.Errorf("%s: %s is missing", b.Tag, path)
			}
		}
	}
}

func TestEveryLanguageTakesTheSameValues(t *testing.T) {
	english := texts(English())
	for _, b := range All()[1:] {
		for path, s := range texts(b) {
			if want, got := verb.FindAllString(english[path], -1), verb.FindAllString(s, -1); !slices.Equal(want, got) {
				t.Errorf("%s: %s takes %v, in English %v", b.Tag, path, got, want)
			}
		}
	}
}

func TestTranslationsDiffer(t *testing.T) {
	english, same := texts(English()), 0
	for path, s := range texts(German()) {
		if len(s) > 12 && s == english[path] {
			t.Logf("same as in English: %s = %q", path, s)
			same++
		}
	}
	if same > 3 {
		t.Errorf("%d long texts are the same in German and English", same)
	}
}

func TestSay(t *testing.T) {
	for _, c := range []struct{ name, english, want string }{
		{"mark", "1/4 mile", "1/4 Meile"},
		{"numbers", "1000 ft", "1000 Fuß"},
		{"unknown", "a sentence nobody wrote", "a sentence nobody wrote"},
	} {
		if got := German().Say(c.english); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
		if got := English().Say(c.english); got != c.english {
			t.Errorf("%s: English changed it to %q", c.name, got)
		}
	}
}

func TestFor(t *testing.T) {
	for tag, want := range map[string]string{"de-AT": "de", "de_DE.UTF-8": "de", "DE": "de", "en-GB": "en", "fr": "en", "": "en"} {
		if got := For(tag).Tag; got != want {
			t.Errorf("For(%q) = %s, want %s", tag, got, want)
		}
	}
}
