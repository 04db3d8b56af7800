package session

import (
	"bytes"
	"encoding/json"
	"math"
	"time"

	"stillair/sensors"
	"stillair/sensors/plain"
)

// Header describes how a session was recorded.
type Header struct {
	ID      ID        // of the recording; zero in files of version 1
	Start   float64   // s on the log's clock at which Started was true
	Started time.Time // wall clock when the recording began; zero if unknown
	Device  string    // the recording device, in words
	Program string    // name and version of the program that wrote the file
	Origin  string    // "recorded", "simulated" or "converted"; may be empty
}

// Remark is what the rider noted at a time of the ride.
type Remark struct {
	T    float64 // s on the log's clock
	Text string
}

func appendString(dst []byte, s string) []byte {
	out, err := json.Marshal(s)
	if err != nil {
		panic("session: a string did not marshal: " + err.Error())
	}
	return append(dst, out...)
}

func appendText(dst []byte, key, s string) []byte {
	if s == "" {
		return dst
	}
	dst = append(append(dst, `,"`...), key...)
	return appendString(append(dst, `":`...), s)
}

// appendField appends a number, nothing where it is NaN.
func appendField(dst []byte, key string, x float64, decimals int) []byte {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return dst
	}
	dst = append(append(dst, `,"`...), key...)
	return appendDecimal(append(dst, `":`...), x, decimals)
}

func appendHeader(dst []byte, h Header) []byte {
	dst = append(dst, `{"type":"header","format":"`+FormatName+`","version":2,"axes":"`+AxesUp+`"`...)
	dst = appendField(dst, "t_s", h.Start, timeDecimals)
	if !h.Started.IsZero() {
		dst = appendField(dst, "utc_ms", float64(h.Started.UnixMilli()), 0)
	}
	dst = appendText(dst, "device", h.Device)
	dst = appendText(dst, "program", h.Program)
	dst = appendText(dst, "origin", h.Origin)
	return append(dst, "}\n"...)
}

func appendRide(dst []byte, ride sensors.Ride) []byte {
	line := bytes.NewBuffer(append(dst, `{"type":"ride","ride":`...))
	if err := json.Compact(line, plain.EncodeRide(ride)); err != nil {
		panic("session: a ride did not become JSON: " + err.Error())
	}
	return append(line.Bytes(), "}\n"...)
}

func appendName(dst []byte, name string) []byte {
	return append(appendString(append(dst, `{"type":"name","text":`...), name), "}\n"...)
}

func appendRemark(dst []byte, r Remark) []byte {
	dst = append(dst, `{"type":"remark"`...)
	dst = appendField(dst, "t_s", r.T, timeDecimals)
	return append(appendString(append(dst, `,"text":`...), r.Text), "}\n"...)
}

func appendFix(dst []byte, f sensors.Fix) []byte {
	dst = append(dst, `{"type":"fix"`...)
	dst = appendField(dst, "t_s", f.T, timeDecimals)
	dst = appendField(dst, "speed_mps", f.Speed, speedDecimals)
	dst = appendField(dst, "speed_sd_mps", f.SpeedSD, speedDecimals)
	dst = appendField(dst, "lat_deg", f.LatDeg, degreeDecimals)
	dst = appendField(dst, "lon_deg", f.LonDeg, degreeDecimals)
	dst = appendField(dst, "h_sd_m", f.HSD, metreDecimals)
	dst = appendField(dst, "alt_m", f.Alt, metreDecimals)
	dst = appendField(dst, "bearing_deg", f.BearingDeg, bearingDecimals)
	if !f.UTC.IsZero() {
		dst = appendField(dst, "utc_ms", float64(f.UTC.UnixMilli()), 0)
	}
	return append(dst, "}\n"...)
}

func appendState(dst []byte, s sensors.State) []byte {
	dst = append(dst, `{"type":"state"`...)
	dst = appendField(dst, "t_s", s.T, timeDecimals)
	dst = appendText(dst, "sensor", string(s.Sensor))
	dst = appendText(dst, "condition", string(s.Condition))
	dst = appendDetail(dst, s.Detail)
	return append(dst, "}\n"...)
}

// appendColumn appends one column of n values.
func appendColumn(dst []byte, key string, decimals, n int, value func(i int) float64) []byte {
	dst = append(append(dst, `,"`...), key...)
	dst = append(dst, `":[`...)
	for i := range n {
		if i > 0 {
			dst = append(dst, ',')
		}
		dst = appendDecimal(dst, value(i), decimals)
	}
	return append(dst, ']')
}

func appendMotion(dst []byte, ms []sensors.Motion) []byte {
	n, turn := len(ms), false
	for i := range ms {
		turn = turn || ms[i].HasTurn()
	}
	dst = append(dst, `{"type":"motion"`...)
	dst = appendColumn(dst, "t_s", timeDecimals, n, func(i int) float64 { return ms[i].T })
	dst = appendColumn(dst, "ax_mps2", forceDecimals, n, func(i int) float64 { return ms[i].Force.X })
	dst = appendColumn(dst, "ay_mps2", forceDecimals, n, func(i int) float64 { return ms[i].Force.Y })
	dst = appendColumn(dst, "az_mps2", forceDecimals, n, func(i int) float64 { return ms[i].Force.Z })
	if turn {
		dst = appendColumn(dst, "gx_radps", turnDecimals, n, func(i int) float64 { return ms[i].Turn.X })
		dst = appendColumn(dst, "gy_radps", turnDecimals, n, func(i int) float64 { return ms[i].Turn.Y })
		dst = appendColumn(dst, "gz_radps", turnDecimals, n, func(i int) float64 { return ms[i].Turn.Z })
	}
	return append(dst, "}\n"...)
}

func appendPressure(dst []byte, ps []sensors.Pressure) []byte {
	dst = append(dst, `{"type":"pressure"`...)
	dst = appendColumn(dst, "t_s", timeDecimals, len(ps), func(i int) float64 { return ps[i].T })
	dst = appendColumn(dst, "pressure_pa", pressureDecimals, len(ps), func(i int) float64 { return ps[i].Pa })
	return append(dst, "}\n"...)
}
