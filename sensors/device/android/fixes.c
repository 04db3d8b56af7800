//go:build android || doubles

#include "fixes.h"

#include <math.h>
#include <pthread.h>
#include <stdatomic.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "leave.h"

enum { ROOM = 64, POLL_MS = 100, LOCALS = 32, ASK_CODE = 7301 };
enum { FLAG_UPDATE_CURRENT = 1 << 27, FLAG_MUTABLE = 1 << 25, API_OREO = 26, API_S = 31 };

#define LOCATION "Landroid/location/Location;"
#define TEXT "Ljava/lang/String;"

struct still_fixes {
	JavaVM *vm;
	jobject activity; /* ours until leave is given or the end */
	jobject app, manager, updates;
	jint api;
	int asked, ordered;
	int64_t newest;
	pthread_t thread;
	atomic_int ending;
	pthread_mutex_t lock;
	int state;
	char why[200];
	int count;
	still_fix waiting[ROOM];
};

static void tell(still_fixes *f, int state, const char *why) {
	pthread_mutex_lock(&f->lock);
	f->state = state;
	snprintf(f->why, sizeof f->why, "%s", why);
	pthread_mutex_unlock(&f->lock);
}

static jobject keep(still_java *j, jobject local) {
	return local ? (*j->env)->NewGlobalRef(j->env, local) : NULL;
}

static void drop(JNIEnv *env, jobject *global) {
	if (*global) (*env)->DeleteGlobalRef(env, *global);
	*global = NULL;
}

/* ask puts the system's question on the screen. From Android 12 the fine
 * location can be asked for only together with the coarse one. */
static void ask(still_fixes *f, still_java *j) {
	still_ask(j, f->activity, STILL_FINE, STILL_COARSE, ASK_CODE);
	f->asked = 1;
}

/* refused reports whether the rider has said no: Android then would have an
 * app explain before it asks again. */
static int refused(still_fixes *f, still_java *j) {
	return still_boolean(j, f->activity, "shouldShowRequestPermissionRationale", "(" TEXT ")Z", still_text(j, STILL_FINE));
}

/* beg asks once, and tells how it stands. */
static void beg(still_fixes *f, still_java *j) {
	if (!f->activity) { /* leave was taken back; only a new start can ask */
		tell(f, STILL_DENIED, "");
		return;
	}
	if (!f->asked) ask(f, j);
	int no = refused(f, j);
	if (!j->failed) tell(f, no ? STILL_DENIED : STILL_ASKING, "");
}

static jobject last_known(still_fixes *f, still_java *j) {
	return still_object(j, f->manager, "getLastKnownLocation", "(" TEXT ")" LOCATION, still_text(j, "gps"));
}

static int64_t stamp(still_java *j, jobject location) { return still_long(j, location, "getElapsedRealtimeNanos", "()J"); }

/* order has fixes sent as often as they come to an intent of this package that
 * nothing receives. Android from 12 on wants to be told that it may fill the
 * intent in, and from 14 on that such an intent names its package. What the system
 * knew before may be hours old and does not count. */
static void order(still_fixes *f, still_java *j) {
	jobject intent = still_new(j, "android/content/Intent", "(" TEXT ")V", still_text(j, "stillair.FIX"));
	jobject package = still_object(j, f->app, "getPackageName", "()" TEXT);
	still_object(j, intent, "setPackage", "(" TEXT ")Landroid/content/Intent;", package);
	jint flags = FLAG_UPDATE_CURRENT | (f->api >= API_S ? FLAG_MUTABLE : 0);
	jobject pending = still_static(j, "android/app/PendingIntent", "getBroadcast",
		"(Landroid/content/Context;ILandroid/content/Intent;I)Landroid/app/PendingIntent;", f->app, (jint)0, intent, flags);
	still_void(j, f->manager, "requestLocationUpdates", "(" TEXT "JFLandroid/app/PendingIntent;)V",
		still_text(j, "gps"), (jlong)0, (jdouble)0, pending);
	jobject before = last_known(f, j);
	if (before) f->newest = stamp(j, before);
	if (j->failed) return;
	f->updates = keep(j, pending);
	f->ordered = 1;
}

static double optional(still_java *j, jobject location, const char *has, const char *get, int is_double) {
	if (!still_boolean(j, location, has, "()Z")) return NAN;
	return is_double ? still_double(j, location, get, "()D") : still_float(j, location, get, "()F");
}

/* poll takes the last known fix if it is a new one. */
static void poll(still_fixes *f, still_java *j) {
	jobject l = last_known(f, j);
	if (!l) return;
	still_fix x = {.t = stamp(j, l)};
	if (x.t <= f->newest || j->failed) return;
	x.utc_ms = still_long(j, l, "getTime", "()J");
	x.lat_deg = still_double(j, l, "getLatitude", "()D");
	x.lon_deg = still_double(j, l, "getLongitude", "()D");
	x.alt_m = optional(j, l, "hasAltitude", "getAltitude", 1);
	x.speed_mps = optional(j, l, "hasSpeed", "getSpeed", 0);
	x.bearing_deg = optional(j, l, "hasBearing", "getBearing", 0);
	x.h_sd_m = optional(j, l, "hasAccuracy", "getAccuracy", 0);
	x.speed_sd_mps = NAN;
	if (f->api >= API_OREO) x.speed_sd_mps = optional(j, l, "hasSpeedAccuracy", "getSpeedAccuracyMetersPerSecond", 0);
	if (j->failed) return;
	f->newest = x.t;
	pthread_mutex_lock(&f->lock);
	if (f->count < ROOM) f->waiting[f->count++] = x;
	pthread_mutex_unlock(&f->lock);
}

/* step does what there is to do in one turn. */
static void step(still_fixes *f, still_java *j) {
	if (!still_allowed(j, f->app, f->api, STILL_FINE)) {
		if (!j->failed) beg(f, j);
	} else if (!still_boolean(j, f->manager, "isProviderEnabled", "(" TEXT ")Z", still_text(j, "gps"))) {
		if (!j->failed) tell(f, STILL_OFF, "");
	} else {
		drop(j->env, &f->activity);
		if (!f->ordered) order(f, j);
		poll(f, j);
		if (!j->failed) tell(f, STILL_LISTENING, "");
	}
	if (j->failed) tell(f, STILL_BROKEN, j->words);
}

static void *run(void *arg) {
	still_fixes *f = arg;
	JNIEnv *env;
	if ((*f->vm)->AttachCurrentThread(f->vm, (void *)&env, NULL) != JNI_OK) {
		tell(f, STILL_BROKEN, "the thread could not be attached");
		return NULL;
	}
	struct timespec pause = {.tv_nsec = POLL_MS * 1000000L};
	while (!atomic_load(&f->ending)) {
		still_java j = {.env = env};
		if ((*env)->PushLocalFrame(env, LOCALS) == 0) {
			step(f, &j);
			(*env)->PopLocalFrame(env, NULL);
		} else {
			(*env)->ExceptionClear(env);
		}
		nanosleep(&pause, NULL);
	}
	still_java j = {.env = env};
	if (f->ordered) still_void(&j, f->manager, "removeUpdates", "(Landroid/app/PendingIntent;)V", f->updates);
	drop(env, &f->activity);
	drop(env, &f->app);
	drop(env, &f->manager);
	drop(env, &f->updates);
	(*f->vm)->DetachCurrentThread(f->vm);
	return NULL;
}

/* find keeps the application's own context, which outlives every activity, and
 * its location service. */
static void find(still_fixes *f, still_java *j, jobject context) {
	f->activity = keep(j, context);
	f->api = still_constant(j, "android/os/Build$VERSION", "SDK_INT");
	f->app = keep(j, still_object(j, context, "getApplicationContext", "()Landroid/content/Context;"));
	f->manager = keep(j, still_object(j, f->app, "getSystemService", "(" TEXT ")Ljava/lang/Object;", still_text(j, "location")));
}

/* present reports whether the phone has a satellite receiver at all. */
static int present(still_fixes *f, still_java *j) {
	jobject all = still_object(j, f->manager, "getAllProviders", "()Ljava/util/List;");
	return still_boolean(j, all, "contains", "(Ljava/lang/Object;)Z", still_text(j, "gps"));
}

still_fixes *still_fixes_start(JavaVM *vm, JNIEnv *env, jobject context) {
	still_fixes *f = calloc(1, sizeof *f);
	if (!f) return NULL;
	f->vm = vm;
	pthread_mutex_init(&f->lock, NULL);
	still_java j = {.env = env};
	find(f, &j, context);
	int here = present(f, &j);
	if (j.failed) tell(f, STILL_BROKEN, j.words);
	else if (!here) tell(f, STILL_ABSENT, "");
	atomic_store(&f->ending, j.failed || !here);
	if (pthread_create(&f->thread, NULL, run, f) != 0) {
		drop(env, &f->activity);
		drop(env, &f->app);
		drop(env, &f->manager);
		free(f);
		return NULL;
	}
	return f;
}

int still_fixes_take(still_fixes *f, still_fix *to, int room) {
	pthread_mutex_lock(&f->lock);
	int n = f->count < room ? f->count : room;
	memcpy(to, f->waiting, (size_t)n * sizeof *to);
	memmove(f->waiting, f->waiting + n, (size_t)(f->count - n) * sizeof *to);
	f->count -= n;
	pthread_mutex_unlock(&f->lock);
	return n;
}

int still_fixes_state(still_fixes *f, char *why, int room) {
	pthread_mutex_lock(&f->lock);
	int state = f->state;
	snprintf(why, (size_t)room, "%s", f->why);
	pthread_mutex_unlock(&f->lock);
	return state;
}

void still_fixes_stop(still_fixes *f) {
	atomic_store(&f->ending, 1);
	pthread_join(f->thread, NULL);
	pthread_mutex_destroy(&f->lock);
	free(f);
}
