//go:build android || doubles

#include "place.h"

#include <stdio.h>

#include "call.h"

int still_files_folder(JNIEnv *env, jobject context, char *path, int room) {
	still_java j = {.env = env};
	jobject folder = still_object(&j, context, "getFilesDir", "()Ljava/io/File;");
	jstring text = still_object(&j, folder, "getAbsolutePath", "()Ljava/lang/String;");
	if (j.failed || !text) {
		snprintf(path, (size_t)room, "%s", j.words);
		return 0;
	}
	const char *c = (*env)->GetStringUTFChars(env, text, NULL);
	if (!c) {
		(*env)->ExceptionClear(env);
		return 0;
	}
	int n = snprintf(path, (size_t)room, "%s", c);
	(*env)->ReleaseStringUTFChars(env, text, c);
	return n < room;
}
