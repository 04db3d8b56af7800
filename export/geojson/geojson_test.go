package geojson

import (
	"bytes"
	"testing"

	"github.com/tidwall/gjson"

	"stillair/export/exporttest"
)

// TestWrite checks the requirements of RFC 7946: longitude before latitude
// (3.1.1), two positions or more in a line (3.1.4), a FeatureCollection of
// Features (3.3).
func TestWrite(t *testing.T) {
	var b bytes.Buffer
	if err := Write(&b, exporttest.Log(), exporttest.Result(), "loop"); err != nil {
		t.Fatal(err)
	}
	doc := gjson.ParseBytes(b.Bytes())
	tests := []struct{ path, want string }{
		{"type", "FeatureCollection"},
		{"features.#", "3"},
		{"features.0.type", "Feature"},
		{"features.0.geometry.type", "MultiLineString"},
		{"features.0.geometry.coordinates.#", "2"},
		{"features.0.geometry.coordinates.0.#", "21"},
		{"features.0.geometry.coordinates.0.0.0", "9.5"},
		{"features.0.geometry.coordinates.0.0.1", "51"},
		{"features.0.properties.name", "loop"},
		{"features.1.properties.kind", "launch"},
		{"features.1.geometry.type", "LineString"},
		{"features.1.properties.marks.0.s", "4.31"},
		{"features.2.properties.kind", "coast-down"},
	}
	for _, tt := range tests {
		if got := doc.Get(tt.path).String(); got != tt.want {
			t.Errorf("%s: got %q, want %q", tt.path, got, tt.want)
		}
	}
}
