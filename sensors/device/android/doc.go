// Package android drives the sensors of an Android phone. The work is done in
// plain C, which can be compiled on other systems against test doubles of
// Android: a thread on the NDK's sensor queue for motion and pressure
// (motion.c) and a thread attached to the virtual machine that asks for
// permission, orders fixes and reads the last known one (fixes.c). Each writes
// to its own ring buffer, which Port empties.
//
// # The microphone
//
// A thread reads AAudio (microphone.c), which is looked up while the program runs,
// since it came with Android 8. Unprocessed sound is requested if the phone
// supports it, and otherwise the input preset for speech recognition, which
// Android requires to have no automatic gain control (Compatibility Definition,
// section 5.4; from memory). Microphone downsamples it in the program, and nothing
// above the band is kept. AAudio reports when a frame was captured; if a phone
// does not, sound is stamped when it was delivered, and package runs estimates
// its latency. A disconnected microphone, as when a headset is plugged in, is
// reported and not opened again until the next recording.
//
// # With the screen off
//
// Nothing here needs the screen or the window: the receiver is asked through
// the application's own context, and what keeps the process alive and the
// processor awake is a foreground service (Service), whose few lines of Java
// are smali in app/desk/android. The screen may be off.
//
// # Axes and units
//
// Android's accelerometer gives specific force in m/s², +g upwards at rest, and
// its gyroscope rad/s, right-handed about the same axes (SensorEvent in
// Android's reference): both as in package sensors. Pressure comes in hPa.
//
// # Clocks
//
// Everything is stamped on CLOCK_BOOTTIME: sensor events by their time of
// measurement, fixes by getElapsedRealtimeNanos. A phone that stamps its
// sensors on CLOCK_MONOTONIC is detected and corrected.
//
// # What only a phone can show
//
// The code has been compiled and linked for arm64 and run against doubles, and
// never on a phone. The rate of fixes, the clock and the axes of a given
// phone's sensors, the system's dialogs, the latency and the loudness of its
// microphone, and whether its maker leaves a foreground service alone with the
// screen off, are not known from that.
package android
