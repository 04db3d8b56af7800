//go:build ignore

/* Stands in for Android's AAudio: a microphone of 48 kHz that hears tones of
 * 200 and 2900 Hz, each a quarter of full scale, whose phase is that of the
 * time since the phone was started. Sound is handed over LATE after it was
 * heard. With EARLY it is that of Android 8, which knows no presets. */
#include <math.h>
#include <stdatomic.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "stage.h"

enum { RATE = 48000, INTERNAL = -896, INVALID_STATE = -895, DISCONNECTED = -899, ILLEGAL = -898, NONE = 10 };
#define LATE 15000000LL

typedef struct { int32_t direction, format, channels, preset; } builder;
typedef struct { int64_t start, read; } stream;

static int denied, picky, unstamped;
static int64_t cut;
static atomic_int listening, last;

void stage_microphone(int d, int p, int u, int64_t c) { denied = d, picky = p, unstamped = u, cut = c, last = 0; }
int stage_listening(void) { return listening; }
int stage_preset(void) { return last; }

static int64_t now(void) { return stage_clock(CLOCK_MONOTONIC); }

/* heard is when a reading was heard, on CLOCK_MONOTONIC. */
static int64_t heard(const stream *s, int64_t n) { return s->start + n * 1000000000 / RATE; }

int32_t AAudio_createStreamBuilder(builder **b) {
	*b = calloc(1, sizeof **b);
	return 0;
}
void AAudioStreamBuilder_setDirection(builder *b, int32_t x) { b->direction = x; }
void AAudioStreamBuilder_setFormat(builder *b, int32_t x) { b->format = x; }
void AAudioStreamBuilder_setChannelCount(builder *b, int32_t x) { b->channels = x; }
#ifndef EARLY
void AAudioStreamBuilder_setInputPreset(builder *b, int32_t x) { b->preset = x; }
#endif
int32_t AAudioStreamBuilder_delete(builder *b) {
	free(b);
	return 0;
}
int32_t AAudioStreamBuilder_openStream(builder *b, stream **s) {
	if (b->direction != 1 || b->format != 1 || b->channels != 1) return ILLEGAL;
	if (denied || (picky && b->preset == 9)) return INTERNAL;
	last = b->preset;
	listening++;
	*s = calloc(1, sizeof **s);
	return 0;
}
int32_t AAudioStream_requestStart(stream *s) {
	s->start = now();
	return 0;
}
int32_t AAudioStream_requestStop(stream *s) { return 0; }
int32_t AAudioStream_close(stream *s) {
	listening--;
	free(s);
	return 0;
}
int32_t AAudioStream_getSampleRate(stream *s) { return RATE; }
int64_t AAudioStream_getFramesRead(stream *s) { return s->read; }

int32_t AAudioStream_getTimestamp(stream *s, clockid_t clock, int64_t *n, int64_t *t) {
	if (clock != CLOCK_MONOTONIC) return ILLEGAL;
	if (unstamped || s->read < RATE / 10) return INVALID_STATE;
	*n = s->read - 100;
	*t = heard(s, *n);
	return 0;
}

int32_t AAudioStream_read(stream *s, void *to, int32_t count, int64_t timeout) {
	if (cut && now() - s->start > cut) return DISCONNECTED;
	int64_t wait = heard(s, s->read + count) + LATE - now();
	if (wait > timeout) {
		nanosleep(&(struct timespec){.tv_nsec = timeout}, NULL);
		return 0;
	}
	if (wait > 0) nanosleep(&(struct timespec){.tv_nsec = wait}, NULL);
	int64_t slept = stage_clock(CLOCK_BOOTTIME) - now();
	int16_t *out = to;
	for (int32_t i = 0; i < count; i++) {
		double turns = 2 * M_PI * fmod((heard(s, s->read) + slept) / 1e9, 1); /* both tones are whole in a second */
		out[i] = (int16_t)lrint(8192 * (sin(200 * turns) + sin(2900 * turns)));
		s->read++;
	}
	return count;
}
