//go:build android || doubles

#include "awake.h"

#include <stdio.h>

#include "call.h"

#define TEXT "Ljava/lang/String;"
#define LOCK "Landroid/os/PowerManager$WakeLock;"

/* The lock of the power manager is old-fashioned beside a flag of the window,
 * but the window may be touched on the thread of the user interface alone,
 * where the program never is. */
enum { SCREEN_BRIGHT_WAKE_LOCK = 0x0a, ON_AFTER_RELEASE = 0x20000000 };

jobject still_awake_hold(JNIEnv *env, jobject context, char *why, int room) {
	still_java j = {.env = env};
	jobject power = still_object(&j, context, "getSystemService", "(" TEXT ")Ljava/lang/Object;", still_text(&j, "power"));
	jobject lock = still_object(&j, power, "newWakeLock", "(I" TEXT ")" LOCK,
		(jint)(SCREEN_BRIGHT_WAKE_LOCK | ON_AFTER_RELEASE), still_text(&j, "stillair:recording"));
	still_void(&j, lock, "acquire", "()V");
	if (j.failed) {
		snprintf(why, (size_t)room, "%s", j.words);
		return NULL;
	}
	return (*env)->NewGlobalRef(env, lock);
}

void still_awake_release(JNIEnv *env, jobject held) {
	still_java j = {.env = env};
	still_void(&j, held, "release", "()V");
	(*env)->DeleteGlobalRef(env, held);
}
