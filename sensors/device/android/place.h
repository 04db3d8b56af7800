/* Where the app may keep files. */
#ifndef STILL_PLACE_H
#define STILL_PLACE_H

#include <jni.h>

/* still_files_folder writes the path of the app's own folder to path and
 * returns 1, or writes why there is none and returns 0. */
int still_files_folder(JNIEnv *env, jobject context, char *path, int room);

#endif
