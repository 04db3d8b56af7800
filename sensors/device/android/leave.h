/* Leave that the rider gives to an app while it runs. */
#ifndef STILL_LEAVE_H
#define STILL_LEAVE_H

#include "call.h"

#define STILL_HEAR "android.permission.RECORD_AUDIO"
#define STILL_FINE "android.permission.ACCESS_FINE_LOCATION"
#define STILL_COARSE "android.permission.ACCESS_COARSE_LOCATION"

/* still_allowed reports whether the app has a permission. Before Android 6
 * leave was given at installation. */
int still_allowed(still_java *j, jobject context, jint api, const char *name);

/* still_ask puts the system's question for one permission, or for two that go
 * together, on the screen. two may be NULL. Android takes one question at a
 * time, and drops one that comes while another is open. */
void still_ask(still_java *j, jobject activity, const char *one, const char *two, jint code);

/* How it stands with the microphone: a sum, or -1 with why in words. */
enum {
	STILL_MAY_HEAR = 1,
	STILL_UNTREATED = 2 /* the phone gives sound as it came in */
};
int still_hear_leave(JNIEnv *env, jobject activity, char *why, int room);

/* still_answers counts the questions that the rider has answered since the app
 * was started (RideActivity.smali), or -1 with why in words. */
int still_answers(JNIEnv *env, jobject activity, char *why, int room);

/* still_hear_ask asks for the microphone, and returns 1, or 0 with why. */
int still_hear_ask(JNIEnv *env, jobject activity, char *why, int room);

#endif
