//go:build android || doubles

#include "ear.h"

#include <dlfcn.h>
#include <pthread.h>
#include <stdatomic.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "motion.h"

/* ROOM holds five seconds at 48 kHz. */
enum { ROOM = 256, NAME = 64 };
#define WAIT_NS 200000000LL

/* Numbers of aaudio/AAudio.h, which are part of Android's binary interface. */
enum { OK = 0, INPUT = 1, SIXTEEN_BITS = 1, VOICE_RECOGNITION = 6, UNPROCESSED = 9 };

typedef struct builder builder;
typedef struct stream stream;

/* What is used of AAudio. preset came two versions later than the rest. */
struct aaudio {
	int32_t (*create)(builder **);
	void (*direction)(builder *, int32_t);
	void (*format)(builder *, int32_t);
	void (*channels)(builder *, int32_t);
	void (*preset)(builder *, int32_t);
	int32_t (*open)(builder *, stream **);
	int32_t (*forget)(builder *);
	int32_t (*start)(stream *);
	int32_t (*stop)(stream *);
	int32_t (*close)(stream *);
	int32_t (*rate)(stream *);
	int32_t (*read)(stream *, void *, int32_t, int64_t);
	int64_t (*frames)(stream *);
	int32_t (*stamp)(stream *, clockid_t, int64_t *, int64_t *);
};

struct still_ear {
	char library[NAME];
	int untreated;
	struct aaudio a;
	stream *stream;
	pthread_t thread;
	atomic_int ending;
	pthread_mutex_t lock;
	int state;
	int32_t rate, code;
	int head, count;
	int64_t lost;
	still_heard ring[ROOM];
};

static void tell(still_ear *e, int state, int32_t code) {
	pthread_mutex_lock(&e->lock);
	e->state = state;
	e->code = code;
	pthread_mutex_unlock(&e->lock);
}

/* look_up finds AAudio and reports whether it is there. The library stays
 * loaded: other parts of the system may use it. */
static int look_up(struct aaudio *a, const char *library) {
	void *from = dlopen(library, RTLD_NOW);
	if (!from) return 0;
	struct { const char *name; void **to; } all[] = {
		{"AAudioStreamBuilder_setInputPreset", (void **)&a->preset}, /* may be missing */
		{"AAudio_createStreamBuilder", (void **)&a->create},
		{"AAudioStreamBuilder_setDirection", (void **)&a->direction},
		{"AAudioStreamBuilder_setFormat", (void **)&a->format},
		{"AAudioStreamBuilder_setChannelCount", (void **)&a->channels},
		{"AAudioStreamBuilder_openStream", (void **)&a->open},
		{"AAudioStreamBuilder_delete", (void **)&a->forget},
		{"AAudioStream_requestStart", (void **)&a->start},
		{"AAudioStream_requestStop", (void **)&a->stop},
		{"AAudioStream_close", (void **)&a->close},
		{"AAudioStream_getSampleRate", (void **)&a->rate},
		{"AAudioStream_read", (void **)&a->read},
		{"AAudioStream_getFramesRead", (void **)&a->frames},
		{"AAudioStream_getTimestamp", (void **)&a->stamp},
	};
	for (unsigned i = 0; i < sizeof all / sizeof *all; i++) {
		*all[i].to = dlsym(from, all[i].name);
		if (i > 0 && !*all[i].to) return 0;
	}
	return 1;
}

/* open_with opens the microphone at the rate that it has of its own: to change
 * that is left to the filter behind it. */
static int32_t open_with(still_ear *e, int32_t preset) {
	builder *b;
	int32_t code = e->a.create(&b);
	if (code != OK) return code;
	e->a.direction(b, INPUT);
	e->a.format(b, SIXTEEN_BITS);
	e->a.channels(b, 1);
	if (e->a.preset) e->a.preset(b, preset); /* before there was one, it was VOICE_RECOGNITION */
	code = e->a.open(b, &e->stream);
	e->a.forget(b);
	if (code != OK) e->stream = NULL;
	return code;
}

/* open_ear returns OK once the microphone runs. */
static int32_t open_ear(still_ear *e) {
	int32_t code = open_with(e, e->untreated ? UNPROCESSED : VOICE_RECOGNITION);
	if (code != OK && e->untreated) code = open_with(e, VOICE_RECOGNITION);
	if (code != OK) return code;
	pthread_mutex_lock(&e->lock);
	e->rate = e->a.rate(e->stream);
	pthread_mutex_unlock(&e->lock);
	return e->a.start(e->stream);
}

/* stamp says when a reading was heard. Every kind of stream knows
 * CLOCK_MONOTONIC, and not every one another clock. Shortly after the start,
 * and on some phones ever, there is no stamp. */
static void stamp(still_ear *e, still_heard *h) {
	h->stamped = e->a.stamp(e->stream, CLOCK_MONOTONIC, &h->n, &h->t) == OK;
	if (h->stamped) {
		h->t = still_since_boot(h->t);
	} else {
		h->n = h->first + h->count;
		h->t = still_now();
	}
}

static void put(still_ear *e, const still_heard *h) {
	pthread_mutex_lock(&e->lock);
	if (e->count == ROOM) {
		e->head = (e->head + 1) % ROOM;
		e->count--;
		e->lost++;
	}
	e->ring[(e->head + e->count++) % ROOM] = *h;
	pthread_mutex_unlock(&e->lock);
}

/* listen reads until the end, or until the microphone is taken away. */
static void listen(still_ear *e) {
	still_heard h;
	while (!atomic_load(&e->ending)) {
		h.count = e->a.read(e->stream, h.level, STILL_AT_ONCE, WAIT_NS);
		if (h.count < 0) {
			tell(e, STILL_EAR_CUT, h.count);
			return;
		}
		if (h.count == 0) continue; /* nothing came in time */
		h.first = e->a.frames(e->stream) - h.count;
		stamp(e, &h);
		put(e, &h);
	}
}

static void *run(void *arg) {
	still_ear *e = arg;
	if (!look_up(&e->a, e->library)) {
		tell(e, STILL_EAR_NONE, 0);
		return NULL;
	}
	int32_t code = open_ear(e);
	if (code == OK) {
		tell(e, STILL_EAR_LISTENING, 0);
		listen(e);
		e->a.stop(e->stream);
	} else {
		tell(e, STILL_EAR_REFUSED, code);
	}
	if (e->stream) e->a.close(e->stream);
	return NULL;
}

still_ear *still_ear_start(const char *library, int untreated) {
	still_ear *e = calloc(1, sizeof *e);
	if (!e) return NULL;
	snprintf(e->library, sizeof e->library, "%s", library);
	e->untreated = untreated;
	pthread_mutex_init(&e->lock, NULL);
	if (pthread_create(&e->thread, NULL, run, e) != 0) {
		free(e);
		return NULL;
	}
	return e;
}

int still_ear_take(still_ear *e, still_heard *to, int room, int64_t *lost) {
	pthread_mutex_lock(&e->lock);
	int n = e->count < room ? e->count : room;
	for (int i = 0; i < n; i++) to[i] = e->ring[(e->head + i) % ROOM];
	e->head = (e->head + n) % ROOM;
	e->count -= n;
	*lost += e->lost;
	e->lost = 0;
	pthread_mutex_unlock(&e->lock);
	return n;
}

int still_ear_state(still_ear *e, int32_t *rate, int32_t *code) {
	pthread_mutex_lock(&e->lock);
	int state = e->state;
	*rate = e->rate;
	*code = e->code;
	pthread_mutex_unlock(&e->lock);
	return state;
}

void still_ear_stop(still_ear *e) {
	atomic_store(&e->ending, 1);
	pthread_join(e->thread, NULL);
	pthread_mutex_destroy(&e->lock);
	free(e);
}
