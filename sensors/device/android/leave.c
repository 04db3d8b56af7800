//go:build android || doubles

#include "leave.h"

#include <stdio.h>

enum { GRANTED = 0, API_MARSHMALLOW = 23, ASK_TO_HEAR = 7302 };

#define TEXT "Ljava/lang/String;"

int still_allowed(still_java *j, jobject context, jint api, const char *name) {
	if (api < API_MARSHMALLOW) return 1;
	return still_int(j, context, "checkSelfPermission", "(" TEXT ")I", still_text(j, name)) == GRANTED && !j->failed;
}

void still_ask(still_java *j, jobject activity, const char *one, const char *two, jint code) {
	jobjectArray names = still_texts(j, one, two);
	still_void(j, activity, "requestPermissions", "([" TEXT "I)V", names, code);
}

/* untreated asks whether the phone can leave out what it does for voices: its
 * control of loudness above all. Where it cannot, Android would take another
 * treatment of its own choice in silence. */
static int untreated(still_java *j, jobject context) {
	jobject audio = still_object(j, context, "getSystemService", "(" TEXT ")Ljava/lang/Object;", still_text(j, "audio"));
	jobject says = still_object(j, audio, "getProperty", "(" TEXT ")" TEXT,
		still_text(j, "android.media.property.SUPPORT_AUDIO_SOURCE_UNPROCESSED"));
	return says && still_boolean(j, still_text(j, "true"), "equals", "(Ljava/lang/Object;)Z", says);
}

int still_hear_leave(JNIEnv *env, jobject activity, char *why, int room) {
	still_java j = {.env = env};
	jint api = still_constant(&j, "android/os/Build$VERSION", "SDK_INT");
	int is = 0;
	if (still_allowed(&j, activity, api, STILL_HEAR)) is |= STILL_MAY_HEAR;
	if (untreated(&j, activity)) is |= STILL_UNTREATED;
	if (!j.failed) return is;
	snprintf(why, (size_t)room, "%s", j.words);
	return -1;
}

int still_answers(JNIEnv *env, jobject activity, char *why, int room) {
	still_java j = {.env = env};
	jint count = still_static_int(&j, activity, "answers");
	if (!j.failed) return count;
	snprintf(why, (size_t)room, "%s", j.words);
	return -1;
}

int still_hear_ask(JNIEnv *env, jobject activity, char *why, int room) {
	still_java j = {.env = env};
	still_ask(&j, activity, STILL_HEAR, NULL, ASK_TO_HEAR);
	if (j.failed) snprintf(why, (size_t)room, "%s", j.words);
	return !j.failed;
}
