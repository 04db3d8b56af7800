//go:build android || doubles

#include "motion.h"

#include <android/looper.h>
#include <android/sensor.h>
#include <pthread.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <time.h>

/* Its successor wants the app's name and does the same. */
#pragma GCC diagnostic ignored "-Wdeprecated-declarations"

/* ROOM holds five seconds of two sensors at 400 Hz. */
enum { ROOM = 4096, READ_AT_ONCE = 64, IDENT = 1, WAIT_MS = 200 };

/* Periods that are tried in turn, in microseconds. 400 Hz leaves less engine
 * vibration to fold into the signal than 200 Hz does; the system refuses it to
 * an app without the permission HIGH_SAMPLING_RATE_SENSORS. */
static const int32_t periods[] = {2500, 5000, 10000};

struct still_motion {
	pthread_t thread;
	pthread_mutex_t lock;
	pthread_cond_t opened;
	int is_open;
	int has;
	atomic_int ending;
	ALooper *looper;
	ASensorEventQueue *queue;
	const ASensor *force, *turn, *pressure;
	int head, count;
	int64_t lost;
	still_event ring[ROOM];
};

/* NANOSECONDS can be set to another clock where the code is tried out. */
#ifndef NANOSECONDS
static int64_t nanoseconds(clockid_t clock) {
	struct timespec t;
	clock_gettime(clock, &t);
	return (int64_t)t.tv_sec * 1000000000 + t.tv_nsec;
}
#define NANOSECONDS nanoseconds
#else
int64_t NANOSECONDS(clockid_t clock);
#endif

int64_t still_now(void) { return NANOSECONDS(CLOCK_BOOTTIME); }

int64_t still_since_boot(int64_t monotonic) {
	return monotonic + NANOSECONDS(CLOCK_BOOTTIME) - NANOSECONDS(CLOCK_MONOTONIC);
}

/* shift is what to add to the stamps of a sensor to have them on CLOCK_BOOTTIME.
 * Android says that they are on it, and some phones use CLOCK_MONOTONIC, which
 * stands still while the phone sleeps. newest was read just now, so the clock
 * it belongs to is the one that it is closer to. */
static int64_t shift(int64_t newest) {
	int64_t boot = NANOSECONDS(CLOCK_BOOTTIME), monotonic = NANOSECONDS(CLOCK_MONOTONIC);
	if (llabs(monotonic - newest) < llabs(boot - newest)) return boot - monotonic;
	return 0;
}

static void put(still_motion *m, still_event e) {
	if (m->count == ROOM) {
		m->head = (m->head + 1) % ROOM;
		m->count--;
		m->lost++;
	}
	m->ring[(m->head + m->count++) % ROOM] = e;
}

static still_event convert(const ASensorEvent *e, int64_t add) {
	still_event out = {.t = e->timestamp + add};
	switch (e->type) {
	case ASENSOR_TYPE_ACCELEROMETER:
		out.kind = STILL_FORCE;
		out.x = e->acceleration.x, out.y = e->acceleration.y, out.z = e->acceleration.z;
		break;
	case ASENSOR_TYPE_GYROSCOPE:
		out.kind = STILL_TURN;
		out.x = e->vector.x, out.y = e->vector.y, out.z = e->vector.z;
		break;
	case ASENSOR_TYPE_PRESSURE:
		out.kind = STILL_PRESSURE;
		out.x = e->pressure;
		break;
	}
	return out;
}

static void read_queue(still_motion *m) {
	ASensorEvent events[READ_AT_ONCE];
	ssize_t n;
	while ((n = ASensorEventQueue_getEvents(m->queue, events, READ_AT_ONCE)) > 0) {
		int64_t add = shift(events[n - 1].timestamp);
		pthread_mutex_lock(&m->lock);
		for (ssize_t i = 0; i < n; i++) {
			still_event e = convert(&events[i], add);
			if (e.kind) put(m, e);
		}
		pthread_mutex_unlock(&m->lock);
	}
}

/* enable switches a sensor on at the shortest period that it and the system
 * allow, and reports whether it runs. */
static int enable(still_motion *m, const ASensor *sensor) {
	if (!sensor || ASensorEventQueue_enableSensor(m->queue, sensor) < 0) return 0;
	int32_t shortest = ASensor_getMinDelay(sensor);
	for (unsigned i = 0; i < sizeof periods / sizeof *periods; i++) {
		int32_t period = periods[i] > shortest ? periods[i] : shortest;
		if (ASensorEventQueue_setEventRate(m->queue, sensor, period) >= 0) return 1;
	}
	return 1; /* at the rate that the system chose */
}

static void open_sensors(still_motion *m) {
	ASensorManager *manager = ASensorManager_getInstance();
	m->looper = ALooper_prepare(ALOOPER_PREPARE_ALLOW_NON_CALLBACKS);
	ALooper_acquire(m->looper);
	if (!manager) return;
	m->queue = ASensorManager_createEventQueue(manager, m->looper, IDENT, NULL, NULL);
	if (!m->queue) return;
	m->force = ASensorManager_getDefaultSensor(manager, ASENSOR_TYPE_ACCELEROMETER);
	m->turn = ASensorManager_getDefaultSensor(manager, ASENSOR_TYPE_GYROSCOPE);
	m->pressure = ASensorManager_getDefaultSensor(manager, ASENSOR_TYPE_PRESSURE);
	if (enable(m, m->force)) m->has |= STILL_FORCE;
	if (enable(m, m->turn)) m->has |= STILL_TURN;
	if (enable(m, m->pressure)) m->has |= STILL_PRESSURE;
}

static void close_sensors(still_motion *m) {
	if (m->queue) {
		if (m->has & STILL_FORCE) ASensorEventQueue_disableSensor(m->queue, m->force);
		if (m->has & STILL_TURN) ASensorEventQueue_disableSensor(m->queue, m->turn);
		if (m->has & STILL_PRESSURE) ASensorEventQueue_disableSensor(m->queue, m->pressure);
		ASensorManager_destroyEventQueue(ASensorManager_getInstance(), m->queue);
	}
	ALooper_release(m->looper);
}

static void *run(void *arg) {
	still_motion *m = arg;
	open_sensors(m);
	pthread_mutex_lock(&m->lock);
	m->is_open = 1;
	pthread_cond_signal(&m->opened);
	pthread_mutex_unlock(&m->lock);
	while (!atomic_load(&m->ending)) {
		if (ALooper_pollOnce(WAIT_MS, NULL, NULL, NULL) == IDENT) read_queue(m);
	}
	pthread_mutex_lock(&m->lock); /* still_motion_stop may be waking the looper */
	pthread_mutex_unlock(&m->lock);
	close_sensors(m);
	return NULL;
}

still_motion *still_motion_start(void) {
	still_motion *m = calloc(1, sizeof *m);
	if (!m) return NULL;
	pthread_mutex_init(&m->lock, NULL);
	pthread_cond_init(&m->opened, NULL);
	if (pthread_create(&m->thread, NULL, run, m) != 0) {
		free(m);
		return NULL;
	}
	pthread_mutex_lock(&m->lock);
	while (!m->is_open) pthread_cond_wait(&m->opened, &m->lock);
	pthread_mutex_unlock(&m->lock);
	return m;
}

int still_motion_has(const still_motion *m) { return m->has; }

int still_motion_take(still_motion *m, still_event *to, int room, int64_t *lost) {
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

void still_motion_stop(still_motion *m) {
	pthread_mutex_lock(&m->lock);
	atomic_store(&m->ending, 1);
	ALooper_wake(m->looper);
	pthread_mutex_unlock(&m->lock);
	pthread_join(m->thread, NULL);
	pthread_cond_destroy(&m->opened);
	pthread_mutex_destroy(&m->lock);
	free(m);
}
