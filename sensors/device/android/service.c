//go:build android || doubles

#include "service.h"

#include <stdio.h>

#include "leave.h"
#include "notice.h"

#define TEXT "Ljava/lang/String;"
#define INTENT "Landroid/content/Intent;"

enum { API_P = 28, API_R = 30, API_TIRAMISU = 33, ASK_TO_NOTIFY = 7303 };

static int ended(still_java *j, char *why, int room) {
	if (j->failed) snprintf(why, (size_t)room, "%s", j->words);
	return !j->failed;
}

/* Making a notification takes more local references than a thread has for sure. */
enum { LOCALS = 64 };

static int open_frame(still_java *j, char *why, int room) {
	if ((*j->env)->PushLocalFrame(j->env, LOCALS) == 0) return 1;
	(*j->env)->ExceptionClear(j->env);
	snprintf(why, (size_t)room, "no memory");
	return 0;
}

static int close_frame(still_java *j, char *why, int room) {
	(*j->env)->PopLocalFrame(j->env, NULL);
	return ended(j, why, room);
}

/* application is the context that outlives every activity. */
static jobject application(still_java *j, jobject context) {
	return still_object(j, context, "getApplicationContext", "()Landroid/content/Context;");
}

static jobject service_of(still_java *j, jobject context, const char *name) {
	return still_object(j, context, "getSystemService", "(" TEXT ")Ljava/lang/Object;", still_text(j, name));
}

/* It is started as a plain service, which a visible app may, and puts itself
 * into the foreground: one that was started as a foreground service and is then
 * refused takes the app down with it. */
int still_ride_begin(JNIEnv *env, jobject context, const still_ride *r, char *why, int room) {
	still_java j = {.env = env};
	if (!open_frame(&j, why, room)) return 0;
	jobject app = application(&j, context);
	jobject intent = still_service_intent(&j, app, NULL);
	still_object(&j, intent, "putExtra", "(" TEXT "Landroid/os/Parcelable;)" INTENT, still_text(&j, "notification"), still_notice(&j, app, r));
	still_object(&j, intent, "putExtra", "(" TEXT "I)" INTENT, still_text(&j, "types"), (jint)r->types);
	still_object(&j, intent, "putExtra", "(" TEXT "J)" INTENT, still_text(&j, "ride"), (jlong)r->ride);
	jobject name = still_object(&j, app, "startService", "(" INTENT ")Landroid/content/ComponentName;", intent);
	if (!j.failed && !name) {
		j.failed = 1;
		snprintf(j.words, sizeof j.words, "startService found no service");
	}
	return close_frame(&j, why, room);
}

int still_ride_show(JNIEnv *env, jobject context, const still_ride *r, char *why, int room) {
	still_java j = {.env = env};
	if (!open_frame(&j, why, room)) return 0;
	jobject app = application(&j, context);
	jobject notice = still_notice(&j, app, r);
	still_void(&j, service_of(&j, app, "notification"), "notify", "(ILandroid/app/Notification;)V", (jint)STILL_NOTICE, notice);
	return close_frame(&j, why, room);
}

int still_ride_end(JNIEnv *env, jobject context, char *why, int room) {
	still_java j = {.env = env};
	jobject app = application(&j, context);
	still_boolean(&j, app, "stopService", "(" INTENT ")Z", still_service_intent(&j, app, NULL));
	return ended(&j, why, room);
}

int still_settings_read(JNIEnv *env, jobject context, still_settings *s, char *why, int room) {
	still_java j = {.env = env};
	jobject app = application(&j, context);
	jint api = still_constant(&j, "android/os/Build$VERSION", "SDK_INT");
	jobject power = service_of(&j, app, "power");
	s->notifications = still_boolean(&j, service_of(&j, app, "notification"), "areNotificationsEnabled", "()Z");
	s->saving = still_boolean(&j, power, "isPowerSaveMode", "()Z");
	s->approximate = !still_allowed(&j, app, api, STILL_FINE) && still_allowed(&j, app, api, STILL_COARSE);
	s->lit = still_boolean(&j, power, "isInteractive", "()Z");
	s->location_mode = s->restricted = -1;
	if (api >= API_P) {
		s->location_mode = still_int(&j, power, "getLocationPowerSaveMode", "()I");
		s->restricted = still_boolean(&j, service_of(&j, app, "activity"), "isBackgroundRestricted", "()Z");
	}
	return ended(&j, why, room);
}

int still_notify_ask(JNIEnv *env, jobject activity, char *why, int room) {
	still_java j = {.env = env};
	if (still_constant(&j, "android/os/Build$VERSION", "SDK_INT") >= API_TIRAMISU)
		still_ask(&j, activity, "android.permission.POST_NOTIFICATIONS", NULL, ASK_TO_NOTIFY);
	return ended(&j, why, room);
}

int still_last_exit(JNIEnv *env, jobject context) {
	still_java j = {.env = env};
	jobject app = application(&j, context);
	if (still_constant(&j, "android/os/Build$VERSION", "SDK_INT") < API_R) return -1;
	jobject package = still_object(&j, app, "getPackageName", "()" TEXT);
	jobject list = still_object(&j, service_of(&j, app, "activity"), "getHistoricalProcessExitReasons",
		"(" TEXT "II)Ljava/util/List;", package, (jint)0, (jint)1);
	if (still_int(&j, list, "size", "()I") < 1 && !j.failed) return -1;
	jobject last = still_object(&j, list, "get", "(I)Ljava/lang/Object;", (jint)0);
	jint reason = still_int(&j, last, "getReason", "()I");
	return j.failed ? -1 : reason;
}

void still_words(JNIEnv *env, jstring text, char *to, int room) {
	const char *c = text ? (*env)->GetStringUTFChars(env, text, NULL) : NULL;
	snprintf(to, (size_t)room, "%s", c ? c : "");
	if (c) (*env)->ReleaseStringUTFChars(env, text, c);
}
