/* Keeps the screen on. */
#ifndef STILL_AWAKE_H
#define STILL_AWAKE_H

#include <jni.h>

/* still_awake_hold keeps the screen on and returns a global reference to what
 * does so, or NULL, with why in words. It may be called on any thread. */
jobject still_awake_hold(JNIEnv *env, jobject context, char *why, int room);

/* still_awake_release lets it go dark again. */
void still_awake_release(JNIEnv *env, jobject held);

#endif
