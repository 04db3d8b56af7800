package android

import (
	"encoding/xml"
	"strings"
	"testing"
)

// TestParseManifest reads what aapt 10 prints.
func TestParseManifest(t *testing.T) {
	m := parseManifest(`N: android=http://schemas.android.com/apk/res/android
  E: manifest (line=2)
    A: android:versionName(0x0101021c)="1.0.0" (Raw: "1.0.0")
    A: package="stillair.phone" (Raw: "stillair.phone")
    E: uses-sdk (line=10)
      A: android:minSdkVersion(0x0101020c)=(type 0x10)0x1a
    E: application (line=29)
      A: android:icon(0x01010002)=@0x7f020000
      E: service (line=49)
        A: android:name(0x01010003)="a.b.C" (Raw: "a.b.C")
        A: android:exported(0x01010010)=(type 0x12)0x0
`)
	for _, w := range []struct{ element, name, value string }{
		{"manifest", "versionName", "1.0.0"}, {"manifest", "package", "stillair.phone"}, {"uses-sdk", "minSdkVersion", "0x1a"},
		{"application", "icon", "@0x7f020000"}, {"service", "name", "a.b.C"}, {"service", "exported", "0x0"},
	} {
		if !m.has(w.element, w.name, w.value) {
			t.Errorf("no %s of %s as %s in %v", w.name, w.element, w.value, m)
		}
	}
	if all := m.classes(); len(all) != 1 || all[0] != "a.b.C" {
		t.Errorf("classes %q", all)
	}
}

func TestManifestThatSaysLess(t *testing.T) {
	for i, w := range wanted {
		var p problems
		checkManifest(&p, append(append(manifest{}, wanted[:i]...), wanted[i+1:]...))
		if len(p) != 1 || !strings.Contains(p[0], w.value) {
			t.Errorf("without %v: %q", w, p)
		}
	}
	var p problems
	checkManifest(&p, append(append(manifest{}, wanted...), struct{ element, name, value string }{"uses-permission", "name", "android.permission.INTERNET"}))
	if len(p) != 1 || !strings.Contains(p[0], "internet") {
		t.Errorf("with the internet: %q", p)
	}
}

func TestTrialSaysWhatItIs(t *testing.T) {
	data, err := read("AndroidManifest.xml")
	if err != nil {
		t.Fatal(err)
	}
	trial := trialManifest.Replace(string(data))
	for _, want := range []string{`package="stillair.phone.trial"`, `versionName="1.0.0-trial, never run on a phone"`} {
		if strings.Count(trial, want) != 1 {
			t.Errorf("no %s in the trial's manifest", want)
		}
	}
	if n := strings.Count(trial, `android:label="Stillair trial"`); n != 2 || strings.Contains(trial, `label="Stillair"`) {
		t.Errorf("%d labels of a trial", n)
	}
	if err := xml.Unmarshal([]byte(trial), new(struct{})); err != nil {
		t.Error(err)
	}
}
