/* What the stand-in for libandroid is to do. */
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

#endif
