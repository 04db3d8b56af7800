/* The microphone of an Android phone, read by a thread of its own with AAudio.
 * Plain C. AAudio came with Android 8 and is looked up while the program runs,
 * so that older phones merely have no microphone. */
#ifndef STILL_MICROPHONE_H
#define STILL_MICROPHONE_H

#include <stdint.h>

enum { STILL_AT_ONCE = 960 }; /* readings; 20 ms at 48 kHz */

/* How the microphone is. */
enum {
	STILL_MICROPHONE_OPENING,
	STILL_MICROPHONE_NONE,      /* this Android has no AAudio */
	STILL_MICROPHONE_REFUSED,   /* it was not opened; the code says why */
	STILL_MICROPHONE_LISTENING,
	STILL_MICROPHONE_CUT        /* it was taken away; the code says why */
};

/* What was read at once. Readings are numbered from the opening on; what the
 * system lost is counted too. */
typedef struct {
	int64_t first;   /* number of the first reading */
	int64_t n, t;    /* a reading's number, and when it was heard, in ns on the clock of still_now */
	int32_t stamped; /* the system says so; else t is when reading n was handed over */
	int32_t count;
	int16_t level[STILL_AT_ONCE];
} still_heard;

typedef struct still_microphone still_microphone;

/* still_microphone_start listens in a thread of its own. library is the name of
 * AAudio's; untreated asks for sound as it came in. NULL where there is no
 * memory or no thread. The app must have leave. */
still_microphone *still_microphone_start(const char *library, int untreated);

/* still_microphone_take moves up to room to to, in the order in which they were read,
 * and returns how many. How many were lost for want of room since the last call
 * is added to *lost. */
int still_microphone_take(still_microphone *m, still_heard *to, int room, int64_t *lost);

/* still_microphone_state tells how the microphone is, how many readings a second it
 * gives, and the code of AAudio where it failed. */
int still_microphone_state(still_microphone *m, int32_t *rate, int32_t *code);

/* still_microphone_stop closes the microphone, ends the thread and frees m. */
void still_microphone_stop(still_microphone *m);

#endif
