// Package w3c reads a browser's sensor events: JSON Lines with the member names
// of the W3C specifications.
//
//	{"timeOrigin": 1781438400000.0, "axes": "specific force up"}
//	{"accelerationIncludingGravity": {"x": 0.1, "y": 0.2, "z": 9.8}, "rotationRate": {"alpha": 1, "beta": 0, "gamma": -2}, "interval": 16, "timeStamp": 1234.5}
//	{"coords": {"latitude": 48.1, "longitude": 11.5, "speed": 20.1, "heading": 84, "altitude": 545, "accuracy": 5}, "timestamp": 1781438401234, "timeStamp": 1240.1}
//
// An object with "coords" is a GeolocationPosition (Geolocation API, W3C
// Recommendation); one with "accelerationIncludingGravity" is a
// DeviceMotionEvent (Device Orientation and Motion, W3C); the first line above
// may be missing. Any member may be null or absent; all others are skipped. So
// JSON.stringify of {coords: p.coords.toJSON(), timestamp: p.timestamp} or of
// an event's members makes such a line.
//
// # Units and axes
//
// accelerationIncludingGravity is in m/s². The standard makes it specific
// force: a device on a table with its screen up reads z = +9.8 (its example in
// section "Device motion model", the same as Android's sensors). Browsers of
// iPhones have given the opposite sign, as Core Motion does natively (which
// counts in g, with −1 along z on a table; its turn rate is in rad/s). An
// "axes" member (with the values of the plain log's ride.json) decides;
// otherwise the sign is inferred from bends, see sensors/internal/repair.
//
// rotationRate is in degrees per second, right-handed. Its alpha, beta and gamma are the
// rates about x, y and z, in this order: the standard's getters say so (Editor's Draft of
// February 2025), and so have Chromium, Firefox and Safari always done. Older drafts, and
// handbooks that follow them, name z, x and y, which are the axes of the angles of
// deviceorientation (see github.com/w3c/deviceorientation/pull/43); the standard's example
// of a car in a bend still has that order. In a file by a program that follows those, the
// names have to be swapped first. The standard lets browsers round forces to 0.1 m/s² and
// turn rates to 0.1 deg/s, and they do.
//
// coords.speed is in m/s, coords.heading in degrees clockwise from true north,
// coords.altitude in m above the WGS 84 ellipsoid; each is null where it is not
// known. coords.accuracy is the radius in m that holds 95 % of errors; for
// errors that are normal in both directions this is 2.448 standard deviations.
//
// # Clocks
//
// An event's timeStamp counts milliseconds from the page's time origin (High
// Resolution Time, W3C) and becomes the log's clock. A position's timestamp
// counts milliseconds since 1970 and is the time of acquisition, not of
// arrival; it becomes UTC. Its arrival is, in this order,
//
//  1. its own timeStamp, where the page adds one (performance.now() when the
//     position comes in);
//  2. that of the motion event before it, if the lines are in order of arrival.
//     They are if the difference of both clocks is constant within 3 s;
//  3. its timestamp, converted to the page's clock by "timeOrigin" or because
//     the motion's times count from 1970 as well; this is listed in the log's
//     Notes.
//
// A file for which none of these applies is rejected.
package w3c
