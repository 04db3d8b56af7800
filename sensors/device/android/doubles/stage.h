/* What the stand-ins for libandroid and libaaudio are to do. */
#ifndef STAGE_H
#define STAGE_H

#include <stdint.h>
#include <time.h>

/* absent is a sum of STILL_… of the sensors that are not there; slept is how
 * long the phone has slept, in ns; monotonic says that the sensors stamp on the
 * clock that stands still meanwhile; slowest refuses shorter periods than so
 * many microseconds. */
void stage_sensors(int absent, int64_t slept, int monotonic, int32_t slowest);
/* stage_quiet says that no sensor delivers any more. */
void stage_quiet(int quiet);
/* stage_open is how many sensors are switched on. */
int stage_open(void);
int64_t stage_clock(clockid_t clock);

/* stage_microphone says how the microphone behaves: denied, it is not opened; picky,
 * it is not opened untreated; unstamped, it never says when it heard; cut is
 * after how many ns it is taken away, if not 0. */
void stage_microphone(int denied, int picky, int unstamped, int64_t cut);
/* stage_listening is how many microphones are open, stage_preset how the last
 * one was wanted. */
int stage_listening(void);
int stage_preset(void);

#endif
