/* Accelerometer, gyroscope and barometer of an Android phone, read by a thread
 * of their own with the NDK's sensor queue. Plain C; it needs android/sensor.h
 * and android/looper.h and nothing else of Android. */
#ifndef STILL_MOTION_H
#define STILL_MOTION_H

#include <stdint.h>

enum { STILL_FORCE = 1, STILL_TURN = 2, STILL_PRESSURE = 4 };

/* One event. t is in ns on the clock of still_now, whatever clock the sensor
 * uses. x, y, z are m/s2 or rad/s; a pressure has x alone, in hPa. */
typedef struct {
	int64_t t;
	int32_t kind;
	float x, y, z;
} still_event;

typedef struct still_motion still_motion;

/* still_now is the time since the phone was started, sleep included, in ns. */
int64_t still_now(void);

/* still_since_boot brings a time on CLOCK_MONOTONIC, which stands still while
 * the phone sleeps, to the clock of still_now. The phone must be awake since. */
int64_t still_since_boot(int64_t monotonic);

/* still_motion_start opens the sensors and returns once they run, or NULL
 * where there is no memory or no thread. */
still_motion *still_motion_start(void);

/* still_motion_has tells which sensors the phone has: a sum of STILL_… */
int still_motion_has(const still_motion *m);

/* still_motion_take moves up to room events to to, in the order in which they
 * came, and returns how many. Events lost for want of room since the last call
 * are added to *lost. */
int still_motion_take(still_motion *m, still_event *to, int room, int64_t *lost);

/* still_motion_stop ends the thread and frees m. */
void still_motion_stop(still_motion *m);

#endif
