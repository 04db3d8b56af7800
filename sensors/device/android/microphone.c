//go:build android || doubles

#include "microphone.h"

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

struct still_microphone {
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

static void tell(still_microphone *m, int state, int32_t code) {
	pthread_mutex_lock(&m->lock);
	m->state = state;
	m->code = code;
	pthread_mutex_unlock(&m->lock);
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
static int32_t open_with(still_microphone *m, int32_t preset) {
	builder *b;
	int32_t code = m->a.create(&b);
	if (code != OK) return code;
	m->a.direction(b, INPUT);
	m->a.format(b, SIXTEEN_BITS);
	m->a.channels(b, 1);
	if (m->a.preset) m->a.preset(b, preset); /* before there was one, it was VOICE_RECOGNITION */
	code = m->a.open(b, &m->stream);
	m->a.forget(b);
	if (code != OK) m->stream = NULL;
	return code;
}

/* open_microphone returns OK once the microphone runs. */
static int32_t open_microphone(still_microphone *m) {
	int32_t code = open_with(m, m->untreated ? UNPROCESSED : VOICE_RECOGNITION);
	if (code != OK && m->untreated) code = open_with(m, VOICE_RECOGNITION);
	if (code != OK) return code;
	pthread_mutex_lock(&m->lock);
	m->rate = m->a.rate(m->stream);
	pthread_mutex_unlock(&m->lock);
	return m->a.start(m->stream);
}

/* stamp says when a reading was heard. Every kind of stream knows
 * CLOCK_MONOTONIC, and not every one another clock. Shortly after the start,
 * and on some phones ever, there is no stamp. */
static void stamp(still_microphone *m, still_heard *h) {
	h->stamped = m->a.stamp(m->stream, CLOCK_MONOTONIC, &h->n, &h->t) == OK;
	if (h->stamped) {
		h->t = still_since_boot(h->t);
	} else {
		h->n = h->first + h->count;
		h->t = still_now();
	}
}

static void put(still_microphone *m, const still_heard *h) {
	pthread_mutex_lock(&m->lock);
	if (m->count == ROOM) {
		m->head = (m->head + 1) % ROOM;
		m->count--;
		m->lost++;
	}
	m->ring[(m->head + m->count++) % ROOM] = *h;
	pthread_mutex_unlock(&m->lock);
}

/* listen reads until the end, or until the microphone is taken away. */
static void listen(still_microphone *m) {
	still_heard h;
	while (!atomic_load(&m->ending)) {
		h.count = m->a.read(m->stream, h.level, STILL_AT_ONCE, WAIT_NS);
		if (h.count < 0) {
			tell(m, STILL_MICROPHONE_CUT, h.count);
			return;
		}
		if (h.count == 0) continue; /* nothing came in time */
		h.first = m->a.frames(m->stream) - h.count;
		stamp(m, &h);
		put(m, &h);
	}
}

static void *run(void *arg) {
	still_microphone *m = arg;
	if (!look_up(&m->a, m->library)) {
		tell(m, STILL_MICROPHONE_NONE, 0);
		return NULL;
	}
	int32_t code = open_microphone(m);
	if (code == OK) {
		tell(m, STILL_MICROPHONE_LISTENING, 0);
		listen(m);
		m->a.stop(m->stream);
	} else {
		tell(m, STILL_MICROPHONE_REFUSED, code);
	}
	if (m->stream) m->a.close(m->stream);
	return NULL;
}

still_microphone *still_microphone_start(const char *library, int untreated) {
	still_microphone *m = calloc(1, sizeof *m);
	if (!m) return NULL;
	snprintf(m->library, sizeof m->library, "%s", library);
	m->untreated = untreated;
	pthread_mutex_init(&m->lock, NULL);
	if (pthread_create(&m->thread, NULL, run, m) != 0) {
		free(m);
		return NULL;
	}
	return m;
}

int still_microphone_take(still_microphone *m, still_heard *to, int room, int64_t *lost) {
	pthread_mutex_lock(&m->lock);
	int n = m->count < room ? m->count : room;
	for (int i = 0; i < n; i++) to[i] = m->ring[(m->head + i) % ROOM];
	m->head = (m->head + n) % ROOM;
	m->count -= n;
	*lost += m->lost;
	m->lost = 0;
	pthread_mutex_unlock(&m->lock);
	return n;
}

int still_microphone_state(still_microphone *m, int32_t *rate, int32_t *code) {
	pthread_mutex_lock(&m->lock);
	int state = m->state;
	*rate = m->rate;
	*code = m->code;
	pthread_mutex_unlock(&m->lock);
	return state;
}

void still_microphone_stop(still_microphone *m) {
	atomic_store(&m->ending, 1);
	pthread_join(m->thread, NULL);
	pthread_mutex_destroy(&m->lock);
	free(m);
}
