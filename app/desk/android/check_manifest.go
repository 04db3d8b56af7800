package android

import (
	"context"
	"regexp"
	"strings"
)

// manifest is the encoded manifest as a list: the element, the attribute and
// its value, as aapt prints it.
type manifest []struct{ element, name, value string }

// What aapt prints of an element, and of an attribute: its name, its number
// where it is Android's, and its value.
var (
	elementLine   = regexp.MustCompile(`^\s*E: (\S+)`)
	attributeLine = regexp.MustCompile(`^\s*A: (?:android:)?([\w]+)(?:\(0x[0-9a-f]+\))?=(?:"([^"]*)"|(?:\(type 0x[0-9a-f]+\))?(\S+))`)
)

// readManifest has aapt decode the manifest of a package.
func readManifest(ctx context.Context, path string) (manifest, error) {
	said, err := step{}.run(ctx, "aapt", "dump", "xmltree", path, "AndroidManifest.xml")
	return parseManifest(said), err
}

func parseManifest(said string) (m manifest) {
	element := ""
	for line := range strings.Lines(said) {
		if f := elementLine.FindStringSubmatch(line); f != nil {
			element = f[1]
		} else if f := attributeLine.FindStringSubmatch(line); f != nil {
			m = append(m, struct{ element, name, value string }{element, f[1], f[2] + f[3]})
		}
	}
	return m
}

// has reports whether an element has an attribute of that value.
func (m manifest) has(element, name, value string) bool {
	for _, a := range m {
		if a.element == element && a.name == name && a.value == value {
			return true
		}
	}
	return false
}

// classes are the names of the classes that the manifest names.
func (m manifest) classes() (all []string) {
	for _, a := range m {
		switch a.element {
		case "activity", "service", "receiver", "provider":
			if a.name == "name" {
				all = append(all, a.value)
			}
		}
	}
	return all
}

// wanted is what the manifest must say. Numbers are as aapt prints them: yes is
// 0xffffffff, the types of the service are 0x8 for location and 0x80 for the
// microphone.
var wanted = manifest{
	{"uses-sdk", "minSdkVersion", "0x1a"},
	{"uses-sdk", "targetSdkVersion", "0x23"},
	{"application", "allowBackup", "0x0"},
	{"application", "debuggable", "0x0"},
	{"application", "extractNativeLibs", "0x0"},
	{"application", "enableOnBackInvokedCallback", "0x0"},
	{"activity", "name", "stillair.phone.RideActivity"},
	{"activity", "launchMode", "0x2"},
	{"activity", "exported", "0xffffffff"},
	{"meta-data", "name", "android.app.lib_name"},
	{"meta-data", "value", "phone"},
	{"service", "name", "stillair.phone.RideService"},
	{"service", "exported", "0x0"},
	{"service", "stopWithTask", "0x0"},
	{"service", "foregroundServiceType", "0x88"},
	{"uses-permission", "name", "android.permission.ACCESS_FINE_LOCATION"},
	{"uses-permission", "name", "android.permission.WAKE_LOCK"},
	{"uses-permission", "name", "android.permission.FOREGROUND_SERVICE"},
	{"uses-permission", "name", "android.permission.FOREGROUND_SERVICE_LOCATION"},
	{"uses-permission", "name", "android.permission.FOREGROUND_SERVICE_MICROPHONE"},
	{"uses-permission", "name", "android.permission.HIGH_SAMPLING_RATE_SENSORS"},
}

func checkManifest(p *problems, m manifest) {
	for _, w := range wanted {
		if !m.has(w.element, w.name, w.value) {
			p.add("the manifest does not say %s of %s as %s", w.name, w.element, w.value)
		}
	}
	if m.has("uses-permission", "name", "android.permission.INTERNET") {
		p.add("the manifest asks for the internet, which this app never uses")
	}
}
