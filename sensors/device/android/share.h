/* Hands a file to another app, speaks, and shakes the phone. Each returns 1, or
 * 0 with why in words. */
#ifndef STILL_SHARE_H
#define STILL_SHARE_H

#include <jni.h>

/* still_share puts the bytes into the phone's downloads, where only this app
 * may change them, and opens the system's sheet with the apps that take such a
 * file. context is an Activity. It needs Android 10. */
int still_share(JNIEnv *env, jobject context, const char *name, const char *media_type,
	const void *bytes, int length, char *why, int room);

/* still_voice_open starts the system's voice and returns a global reference to
 * it; it takes a moment until it speaks. */
jobject still_voice_open(JNIEnv *env, jobject context, char *why, int room);
int still_voice_say(JNIEnv *env, jobject voice, const char *text, const char *language, char *why, int room);

int still_buzz(JNIEnv *env, jobject context, long ms, char *why, int room);

#endif
