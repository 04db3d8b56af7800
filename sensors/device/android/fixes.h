/* The satellite receiver of an Android phone, through JNI and without a class
 * of our own: updates are ordered to a PendingIntent that nobody receives,
 * which keeps the receiver running, and the last known fix is read ten times a
 * second. Plain C; it needs jni.h alone. */
#ifndef STILL_FIXES_H
#define STILL_FIXES_H

#include <jni.h>
#include <stdint.h>

/* How the receiver is. */
enum {
	STILL_STARTING,  /* nothing is known yet */
	STILL_ASKING,    /* the rider is being asked for leave */
	STILL_DENIED,    /* leave was refused */
	STILL_ABSENT,    /* the phone has no satellite receiver */
	STILL_OFF,       /* location is switched off in the phone's settings */
	STILL_LISTENING, /* updates are ordered */
	STILL_BROKEN     /* the system refused; the words say why */
};

/* One fix. t is in ns on the clock of still_now, when the system had it. What
 * the system does not give is NaN. */
typedef struct {
	int64_t t;
	int64_t utc_ms;
	double lat_deg, lon_deg, alt_m;
	double speed_mps, speed_sd_mps, bearing_deg;
	double h_sd_m; /* radius that holds 68 % of errors */
} still_fix;

typedef struct still_fixes still_fixes;

/* still_fixes_start listens in a thread of its own. context is an Activity, of
 * which the rider is asked; env and context are used during the call only.
 * NULL where there is no memory or no thread. */
still_fixes *still_fixes_start(JavaVM *vm, JNIEnv *env, jobject context);

/* still_fixes_take moves up to room fixes to to and returns how many. */
int still_fixes_take(still_fixes *f, still_fix *to, int room);

/* still_fixes_state tells how the receiver is, and why in words of the system
 * where it refused. */
int still_fixes_state(still_fixes *f, char *why, int room);

/* still_fixes_stop ends the updates and the thread and frees f. */
void still_fixes_stop(still_fixes *f);

#endif
