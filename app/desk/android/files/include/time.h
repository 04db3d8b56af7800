#ifndef TRIAL_TIME_H
#define TRIAL_TIME_H
#include <sys/types.h>
struct timespec { time_t tv_sec; long tv_nsec; };
struct tm {
	int tm_sec, tm_min, tm_hour, tm_mday, tm_mon, tm_year, tm_wday, tm_yday, tm_isdst;
	long tm_gmtoff;
	const char *tm_zone;
};
#define CLOCK_REALTIME 0
#define CLOCK_MONOTONIC 1
#define CLOCK_BOOTTIME 7
time_t time(time_t *to);
struct tm *localtime_r(const time_t *t, struct tm *to);
int nanosleep(const struct timespec *pause, struct timespec *left);
int clock_gettime(clockid_t clock, struct timespec *to);
#endif
