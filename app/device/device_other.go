//go:build !js && !android

package device

import (
	"context"
	"crypto/rand"
	"os"
	"path/filepath"

	"stillair/app/platform"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Open returns a system with a file system and no sensors: a desktop, where
// the app shows and compares what phones recorded.
func Open() (*platform.Device, error) {
	base, err := os.UserConfigDir()
	if err != nil {
		return nil, err
	}
	files, err := platform.NewDir(filepath.Join(base, "stillair"))
	if err != nil {
		return nil, err
	}
	return &platform.Device{Files: files, Clock: platform.NewSystemClock(), Random: rand.Reader,
		Source: func() sensors.Source { return none{} }}, nil
}

// none is the source of a machine that cannot sense.
type none struct{}

// Run says about each sensor that it is missing, and waits to be stopped.
func (none) Run(ctx context.Context, sink sensors.Sink) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	for _, s := range []sensors.Sensor{sensors.SensorMotion, sensors.SensorTurn, sensors.SensorFix, sensors.SensorPressure} {
		sink.State(sensors.State{Sensor: s, Condition: sensors.Missing, Detail: finding.New("sensor.machine_has_none")})
	}
	<-ctx.Done()
	return ctx.Err()
}
