package gpx

import (
	"bytes"
	"encoding/xml"
	"strings"
	"testing"
	"time"

	"stillair/export/exporttest"
)

// read is GPX as seen by a reader that knows the standard but not our namespace.
type read struct {
	XMLName xml.Name `xml:"http://www.topografix.com/GPX/1/1 gpx"`
	Version string   `xml:"version,attr"`
	Wpt     []struct {
		Lat  float64 `xml:"lat,attr"`
		Name string  `xml:"name"`
		Desc string  `xml:"desc"`
	} `xml:"wpt"`
	Seg []struct {
		Pt []struct {
			Lat  float64   `xml:"lat,attr"`
			Lon  float64   `xml:"lon,attr"`
			Ele  float64   `xml:"ele"`
			Time time.Time `xml:"time"`
		} `xml:"trkpt"`
	} `xml:"trk>trkseg"`
}

func TestWrite(t *testing.T) {
	var b bytes.Buffer
	if err := Write(&b, exporttest.Log(), exporttest.Result(), `Sunday <loop> & "back"`); err != nil {
		t.Fatal(err)
	}
	var got read
	if err := xml.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatalf("%v in\n%s", err, b.String())
	}
	if got.Version != "1.1" || len(got.Seg) != 2 {
		t.Fatalf("version %q with %d segments, want 1.1 with 2: before and after the tunnel", got.Version, len(got.Seg))
	}
	if a, z := len(got.Seg[0].Pt), len(got.Seg[1].Pt); a != 21 || z != 31 {
		t.Errorf("segments of %d and %d points, want 21 and 31", a, z)
	}
	end := got.Seg[1].Pt[30]
	if end.Lat != 51.012 || end.Lon != 9.506 || end.Ele != 150 || !end.Time.Equal(exporttest.Start().Add(time.Minute)) {
		t.Errorf("last point is %+v", end)
	}
	if len(got.Wpt) != 2 || !strings.Contains(got.Wpt[0].Desc, "0-100 km/h 4.31 ± 0.02 s") {
		t.Errorf("waypoints %+v, want the two accepted runs with their marks", got.Wpt)
	}
}

func TestWriteWithoutResult(t *testing.T) {
	var b bytes.Buffer
	if err := Write(&b, exporttest.Log(), nil, ""); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(b.String(), "<wpt") || !strings.Contains(b.String(), "<trkpt") {
		t.Error("want a track and no waypoints")
	}
}
