//go:build android || doubles

#include "share.h"

#include <stdio.h>

#include "call.h"

#define TEXT "Ljava/lang/String;"
#define URI "Landroid/net/Uri;"
#define INTENT "Landroid/content/Intent;"
#define RESOLVER "Landroid/content/ContentResolver;"

enum { API_TEN = 29, READ_GRANTED = 1, QUEUE_ADD = 1, QUEUED = 0 };

static int ended(still_java *j, char *why, int room) {
	if (j->failed) snprintf(why, (size_t)room, "%s", j->words);
	return !j->failed;
}

/* downloads is the address under which the phone's downloads are kept. */
static jobject downloads(still_java *j) {
	return still_static_object(j, "android/provider/MediaStore$Downloads", "EXTERNAL_CONTENT_URI", URI);
}

static jobject entry(still_java *j, const char *name, const char *media_type) {
	jobject values = still_new(j, "android/content/ContentValues", "()V");
	still_void(j, values, "put", "(" TEXT TEXT ")V", still_text(j, "_display_name"), still_text(j, name));
	still_void(j, values, "put", "(" TEXT TEXT ")V", still_text(j, "mime_type"), still_text(j, media_type));
	return values;
}

static void fill(still_java *j, jobject resolver, jobject uri, const void *bytes, int length) {
	jobject stream = still_object(j, resolver, "openOutputStream", "(" URI ")Ljava/io/OutputStream;", uri);
	still_void(j, stream, "write", "([B)V", still_bytes(j, bytes, length));
	still_void(j, stream, "close", "()V");
}

static void offer(still_java *j, jobject context, jobject uri, const char *media_type) {
	jobject send = still_new(j, "android/content/Intent", "(" TEXT ")V", still_text(j, "android.intent.action.SEND"));
	still_object(j, send, "setType", "(" TEXT ")" INTENT, still_text(j, media_type));
	still_object(j, send, "putExtra", "(" TEXT "Landroid/os/Parcelable;)" INTENT,
		still_text(j, "android.intent.extra.STREAM"), uri);
	still_object(j, send, "addFlags", "(I)" INTENT, (jint)READ_GRANTED);
	jobject sheet = still_static(j, "android/content/Intent", "createChooser",
		"(" INTENT "Ljava/lang/CharSequence;)" INTENT, send, (jobject)NULL);
	still_void(j, context, "startActivity", "(" INTENT ")V", sheet);
}

int still_share(JNIEnv *env, jobject context, const char *name, const char *media_type,
	const void *bytes, int length, char *why, int room) {
	still_java j = {.env = env};
	if (still_constant(&j, "android/os/Build$VERSION", "SDK_INT") < API_TEN && !j.failed) {
		snprintf(why, (size_t)room, "sharing needs Android 10");
		return 0;
	}
	jobject resolver = still_object(&j, context, "getContentResolver", "()" RESOLVER);
	jobject uri = still_object(&j, resolver, "insert", "(" URI "Landroid/content/ContentValues;)" URI,
		downloads(&j), entry(&j, name, media_type));
	fill(&j, resolver, uri, bytes, length);
	offer(&j, context, uri, media_type);
	return ended(&j, why, room);
}

jobject still_voice_open(JNIEnv *env, jobject context, char *why, int room) {
	still_java j = {.env = env};
	jobject app = still_object(&j, context, "getApplicationContext", "()Landroid/content/Context;");
	jobject voice = still_new(&j, "android/speech/tts/TextToSpeech",
		"(Landroid/content/Context;Landroid/speech/tts/TextToSpeech$OnInitListener;)V", app, (jobject)NULL);
	return ended(&j, why, room) ? (*env)->NewGlobalRef(env, voice) : NULL;
}

int still_voice_say(JNIEnv *env, jobject voice, const char *text, const char *language, char *why, int room) {
	still_java j = {.env = env};
	jobject locale = still_static(&j, "java/util/Locale", "forLanguageTag", "(" TEXT ")Ljava/util/Locale;", still_text(&j, language));
	still_int(&j, voice, "setLanguage", "(Ljava/util/Locale;)I", locale);
	jint queued = still_int(&j, voice, "speak", "(Ljava/lang/CharSequence;ILandroid/os/Bundle;" TEXT ")I",
		still_text(&j, text), (jint)QUEUE_ADD, (jobject)NULL, still_text(&j, "stillair"));
	if (!j.failed && queued != QUEUED) {
		snprintf(why, (size_t)room, "the system's voice is not ready");
		return 0;
	}
	return ended(&j, why, room);
}

int still_buzz(JNIEnv *env, jobject context, long ms, char *why, int room) {
	still_java j = {.env = env};
	jobject vibrator = still_object(&j, context, "getSystemService", "(" TEXT ")Ljava/lang/Object;", still_text(&j, "vibrator"));
	still_void(&j, vibrator, "vibrate", "(J)V", (jlong)ms);
	return ended(&j, why, room);
}
