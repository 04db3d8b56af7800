package android

import (
	"os"
	"slices"
	"strings"
	"testing"
)

// TestDexOfTheToolkit: the native methods are those of GoNativeActivity.java of
// the toolkit, version 2.8.1.
func TestDexOfTheToolkit(t *testing.T) {
	data, err := read("toolkit.dex")
	if err != nil {
		t.Fatal(err)
	}
	all, err := readDex(data)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(all, func(c class) bool { return c.name == "org.golang.app.GoNativeActivity" })
	if i < 0 {
		t.Fatalf("no activity among %v", all)
	}
	slices.Sort(all[i].native)
	want := "backPressed filePickerReturned insetsChanged keyboardDelete keyboardTyped setDarkMode"
	if got := strings.Join(all[i].native, " "); got != want {
		t.Errorf("native methods %s, want %s", got, want)
	}
}

// TestNativeName: the rules of the Java Native Interface Specification.
func TestNativeName(t *testing.T) {
	for _, c := range []struct{ class, method, want string }{
		{"a.b.C", "go", "Java_a_b_C_go"},
		{"a.under_score.C", "m", "Java_a_under_1score_C_m"},
		{"a.C$D", "ä", "Java_a_C_00024D__000e4"},
	} {
		if got := nativeName(c.class, c.method); got != c.want {
			t.Errorf("%s.%s: %s, want %s", c.class, c.method, got, c.want)
		}
	}
}

func FuzzDex(f *testing.F) {
	data, err := read("toolkit.dex")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(data)
	f.Add(data[:200])
	f.Add([]byte("dex\n035\x00"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if all, err := readDex(data); err != nil && all != nil {
			t.Error("classes beside an error")
		}
	})
}

func TestClassesThatAreMissing(t *testing.T) {
	data, err := read("toolkit.dex")
	if err != nil {
		t.Fatal(err)
	}
	m := manifest{{"service", "name", "stillair.phone.RideService"}, {"activity", "name", "org.golang.app.GoNativeActivity"}}
	var p problems
	checkClasses(&p, map[string][]byte{"classes.dex": data}, m, []string{"Java_org_golang_app_GoNativeActivity_backPressed"})
	said := strings.Join(p, "\n")
	for _, want := range []string{"the class stillair.phone.RideService, which is in no file", "native method setDarkMode"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in\n%s", want, said)
		}
	}
	if strings.Contains(said, "backPressed") || len(p) != 6 {
		t.Errorf("said\n%s", said)
	}
}

// TestToolkitFits: the C side of the toolkit looks methods up in the Java side by
// their names, so both have to be of one version.
func TestToolkitFits(t *testing.T) {
	module, err := os.ReadFile("../../../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	const version = "fyne.io/fyne/v2 v2.8.1"
	if !strings.Contains(string(module), version) {
		t.Errorf("go.mod no longer wants %s: take toolkit.dex from the packaging tool that belongs to the new version, with its hash, "+
			"and look at what its activity's native methods are (TestDexOfTheToolkit)", version)
	}
}
