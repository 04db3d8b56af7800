// Package web drives the sensors, the storage and the other services of a browser. Its
// scripts, which the page loads before the program, do what is better done outside the
// program: sensing.js collects events, keeping.js and keeping-disk.js hold files,
// helping.js keeps the screen on, shares and speaks, reading.js describes the canvas
// to screen readers, returning.js gives each screen an entry in the history.
//
// # Files
//
// A recording lies in the page's private folder (Origin Private File System), to which
// keeping-work.js appends in a worker by a synchronous handle: a block of 4 KiB was on the
// disk after a median of 0.2 ms and at most 0.4 ms behind a busy page of Chromium 156, and
// in IndexedDB with strict durability after 0.9 ms and 104 ms. A hidden page, whose timers
// browsers slow down, continues recording by the timers of a worker (helping-work.js), and
// unsaved data is written to the disk at once when it is hidden. Where there is no such
// folder, or a worker may not write in it, IndexedDB holds recordings, as it holds all that
// is replaced whole. A page that is killed loses no more in either than what had not been
// confirmed.
//
// # Long work
//
// The memory of a program in a page grows and never shrinks: in Chromium 156 one ride of 65
// minutes, measured in the page, left 186 MB where there were 24. So analysing.js starts a
// second copy of the program in a worker (analysing-work.js), from the module that the page
// compiled, and nothing is fetched or compiled a second time. Question and answer are sent
// as bytes, and the worker reads recordings itself. The worker is ended when it has
// answered, when the context ends, or after two minutes of silence.
//
// # The microphone
//
// listening.js opens the microphone without the browser's own treatment of voices,
// and listening-work.js downsamples the sound on the audio thread with a filter
// designed by this package; nothing above the band reaches the page. The latency of
// the microphone that the browser reports is subtracted from the times; the rest is
// estimated by package runs.
//
// # What a browser gives
//
// Position and speed come from the Geolocation API, motion from the
// devicemotion event of Device Orientation and Motion (both W3C). The event is
// preferred to the Accelerometer and Gyroscope of the Generic Sensor API,
// which iPhones lack and which lose more behind a busy page: with the page
// busy for 30 ms of every 100, Chromium 156 delivered 83 % of 60 Hz as events,
// 62 % as Accelerometer readings and 76 % as Gyroscope readings (416 offered).
//
// Chromium rounds forces to 0.1 m/s² and turn rates to 0.1 deg/s, and caps the
// rate at 60 Hz. The time stamp of an event is when it was dispatched, up to
// one period after the sensor was read. A page that is hidden gets nothing.
//
// # Axes
//
// Units and axes are those of package w3c. That rotationRate is about x, y and
// z in this order was seen here too: 0.1, 0.2 and 0.5 rad/s played into the
// gyroscope of Chromium came out as 5.7, 11.5 and 28.6 deg/s of alpha, beta and
// gamma. The forces of iPhones, which have the opposite sign, are turned over;
// sensing.js knows them by the vendor the browser names.
package web
