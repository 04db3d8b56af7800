//go:build ignore

/* Stands in for Android's sensor queue: a phone at rest, with the gyroscope
 * reading the sine of the time. It stamps events when they fall due. */
#include <android/looper.h>
#include <android/sensor.h>
#include <errno.h>
#include <math.h>
#include <pthread.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

#include "stage.h"

struct ASensor { int type, bit; int32_t shortest; int on; int64_t period, next; };
struct ALooper { pthread_mutex_t lock; pthread_cond_t woken; int wake; };
struct ASensorEventQueue { ALooper *looper; int ident; };
struct ASensorManager { int unused; };

static ASensor sensors[] = {
	{.type = ASENSOR_TYPE_ACCELEROMETER, .bit = 1, .shortest = 2500},
	{.type = ASENSOR_TYPE_GYROSCOPE, .bit = 2, .shortest = 2500},
	{.type = ASENSOR_TYPE_PRESSURE, .bit = 4, .shortest = 40000},
};
enum { SENSORS = 3 };
static ASensorManager the_manager;
static ASensorEventQueue the_queue;
static int absent, monotonic;
static atomic_int quiet;
static int64_t slept;
static int32_t slowest;

void stage_sensors(int a, int64_t s, int m, int32_t slow) { absent = a, slept = s, monotonic = m, slowest = slow; }
void stage_quiet(int q) { quiet = q; }

int stage_open(void) {
	int n = 0;
	for (int i = 0; i < SENSORS; i++) n += sensors[i].on;
	return n;
}

static int64_t real(void) {
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return (int64_t)t.tv_sec * 1000000000 + t.tv_nsec;
}

int64_t stage_clock(clockid_t clock) { return real() + (clock == CLOCK_BOOTTIME ? slept : 0); }

ALooper *ALooper_prepare(int opts) {
	ALooper *l = calloc(1, sizeof *l);
	pthread_mutex_init(&l->lock, NULL);
	pthread_cond_init(&l->woken, NULL);
	return l;
}
void ALooper_acquire(ALooper *l) {}
void ALooper_release(ALooper *l) { free(l); }
void ALooper_wake(ALooper *l) {
	pthread_mutex_lock(&l->lock);
	l->wake = 1;
	pthread_cond_signal(&l->woken);
	pthread_mutex_unlock(&l->lock);
}

static ASensor *earliest(void) {
	ASensor *first = NULL;
	for (int i = 0; i < SENSORS && !quiet; i++)
		if (sensors[i].on && (!first || sensors[i].next < first->next)) first = &sensors[i];
	return first;
}

int ALooper_pollOnce(int timeout, int *fd, int *events, void **data) {
	int64_t until = real() + timeout * 1000000LL;
	ASensor *s = earliest();
	int due = s && s->next < until;
	if (due) until = s->next;
	struct timespec at;
	clock_gettime(CLOCK_REALTIME, &at);
	int64_t wait = until - real();
	if (wait < 0) wait = 0;
	at.tv_nsec += wait;
	at.tv_sec += at.tv_nsec / 1000000000, at.tv_nsec %= 1000000000;
	pthread_mutex_lock(&the_queue.looper->lock);
	if (!the_queue.looper->wake) pthread_cond_timedwait(&the_queue.looper->woken, &the_queue.looper->lock, &at);
	int wake = the_queue.looper->wake;
	the_queue.looper->wake = 0;
	pthread_mutex_unlock(&the_queue.looper->lock);
	if (wake) return ALOOPER_POLL_WAKE;
	return due ? the_queue.ident : ALOOPER_POLL_TIMEOUT;
}

ASensorManager *ASensorManager_getInstance(void) { return &the_manager; }
ASensorEventQueue *ASensorManager_createEventQueue(ASensorManager *m, ALooper *l, int ident, ALooper_callbackFunc f, void *data) {
	the_queue.looper = l;
	the_queue.ident = ident;
	return &the_queue;
}
int ASensorManager_destroyEventQueue(ASensorManager *m, ASensorEventQueue *q) { return 0; }
const ASensor *ASensorManager_getDefaultSensor(ASensorManager *m, int type) {
	for (int i = 0; i < SENSORS; i++)
		if (sensors[i].type == type && !(absent & sensors[i].bit)) return &sensors[i];
	return NULL;
}
int ASensor_getMinDelay(const ASensor *s) { return s->shortest; }

int ASensorEventQueue_enableSensor(ASensorEventQueue *q, const ASensor *s) {
	ASensor *own = (ASensor *)s;
	own->on = 1;
	own->period = 200000000;
	own->next = real() + own->bit * 700000; /* each at its own phase */
	return 0;
}
int ASensorEventQueue_disableSensor(ASensorEventQueue *q, const ASensor *s) { ((ASensor *)s)->on = 0; return 0; }
int ASensorEventQueue_setEventRate(ASensorEventQueue *q, const ASensor *s, int32_t period) {
	if (period < slowest) return -EPERM;
	if (period < s->shortest) return -EINVAL;
	((ASensor *)s)->period = period * 1000LL;
	return 0;
}

static void fill(ASensorEvent *e, const ASensor *s) {
	int64_t boot = s->next + slept;
	memset(e, 0, sizeof *e);
	e->version = sizeof *e;
	e->type = s->type;
	e->timestamp = monotonic ? s->next : boot;
	double t = boot / 1e9;
	switch (s->bit) {
	case 1: e->acceleration.x = 0.1f, e->acceleration.z = 9.80665f; break;
	case 2: e->vector.x = (float)sin(t), e->vector.y = 0.5f, e->vector.z = -0.25f; break;
	case 4: e->pressure = 1013.25f; break;
	}
}

ssize_t ASensorEventQueue_getEvents(ASensorEventQueue *q, ASensorEvent *events, size_t room) {
	size_t n = 0;
	ASensor *s;
	while (n < room && (s = earliest()) && s->next <= real()) {
		fill(&events[n++], s);
		s->next += s->period;
	}
	return (ssize_t)n;
}
