//go:build android || doubles

#include "call.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

/* note keeps the words of a pending exception and clears it. */
static void note(still_java *j, const char *doing) {
	JNIEnv *env = j->env;
	jthrowable thrown = (*env)->ExceptionOccurred(env);
	if (!thrown) return;
	(*env)->ExceptionClear(env);
	j->failed = 1;
	snprintf(j->words, sizeof j->words, "%s", doing);
	jclass type = (*env)->GetObjectClass(env, thrown);
	jmethodID to_string = (*env)->GetMethodID(env, type, "toString", "()Ljava/lang/String;");
	jstring text = to_string ? (*env)->CallObjectMethod(env, thrown, to_string) : NULL;
	if ((*env)->ExceptionCheck(env)) {
		(*env)->ExceptionClear(env);
	} else if (text) {
		const char *c = (*env)->GetStringUTFChars(env, text, NULL);
		if (c) {
			snprintf(j->words, sizeof j->words, "%s: %s", doing, c);
			(*env)->ReleaseStringUTFChars(env, text, c);
		}
	}
	(*env)->DeleteLocalRef(env, thrown);
}

static jmethodID method_of(still_java *j, jobject of, const char *method, const char *signature) {
	JNIEnv *env = j->env;
	if (j->failed) return NULL;
	if (!of) {
		j->failed = 1;
		snprintf(j->words, sizeof j->words, "%s of nothing", method);
		return NULL;
	}
	jclass type = (*env)->GetObjectClass(env, of);
	jmethodID id = (*env)->GetMethodID(env, type, method, signature);
	note(j, method);
	(*env)->DeleteLocalRef(env, type);
	return id;
}

#define CALL(name, type, jni, nothing)                                                       \
	type name(still_java *j, jobject of, const char *method, const char *signature, ...) { \
		jmethodID id = method_of(j, of, method, signature);                                  \
		if (!id) return nothing;                                                             \
		va_list args;                                                                        \
		va_start(args, signature);                                                           \
		type result = (*j->env)->jni(j->env, of, id, args);                                  \
		va_end(args);                                                                        \
		note(j, method);                                                                     \
		return j->failed ? nothing : result;                                                 \
	}

CALL(still_object, jobject, CallObjectMethodV, NULL)
CALL(still_int, jint, CallIntMethodV, 0)
CALL(still_long, jlong, CallLongMethodV, 0)
CALL(still_double, jdouble, CallDoubleMethodV, 0)
CALL(still_float, jfloat, CallFloatMethodV, 0)
CALL(still_boolean, jboolean, CallBooleanMethodV, 0)

void still_void(still_java *j, jobject of, const char *method, const char *signature, ...) {
	jmethodID id = method_of(j, of, method, signature);
	if (!id) return;
	va_list args;
	va_start(args, signature);
	(*j->env)->CallVoidMethodV(j->env, of, id, args);
	va_end(args);
	note(j, method);
}

static jclass class_of(still_java *j, const char *class_name) {
	if (j->failed) return NULL;
	jclass type = (*j->env)->FindClass(j->env, class_name);
	note(j, class_name);
	return j->failed ? NULL : type;
}

jobject still_static(still_java *j, const char *class_name, const char *method, const char *signature, ...) {
	jclass type = class_of(j, class_name);
	if (!type) return NULL;
	jmethodID id = (*j->env)->GetStaticMethodID(j->env, type, method, signature);
	note(j, method);
	if (j->failed) return NULL;
	va_list args;
	va_start(args, signature);
	jobject result = (*j->env)->CallStaticObjectMethodV(j->env, type, id, args);
	va_end(args);
	note(j, method);
	return j->failed ? NULL : result;
}

jobject still_new(still_java *j, const char *class_name, const char *signature, ...) {
	jclass type = class_of(j, class_name);
	if (!type) return NULL;
	jmethodID id = (*j->env)->GetMethodID(j->env, type, "<init>", signature);
	note(j, class_name);
	if (j->failed) return NULL;
	va_list args;
	va_start(args, signature);
	jobject result = (*j->env)->NewObjectV(j->env, type, id, args);
	va_end(args);
	note(j, class_name);
	return j->failed ? NULL : result;
}

jobject still_static_object(still_java *j, const char *class_name, const char *field, const char *signature) {
	jclass type = class_of(j, class_name);
	if (!type) return NULL;
	jfieldID id = (*j->env)->GetStaticFieldID(j->env, type, field, signature);
	note(j, field);
	return j->failed ? NULL : (*j->env)->GetStaticObjectField(j->env, type, id);
}

jint still_constant(still_java *j, const char *class_name, const char *field) {
	jclass type = class_of(j, class_name);
	if (!type) return 0;
	jfieldID id = (*j->env)->GetStaticFieldID(j->env, type, field, "I");
	note(j, field);
	return j->failed ? 0 : (*j->env)->GetStaticIntField(j->env, type, id);
}

jint still_static_int(still_java *j, jobject of, const char *field) {
	if (j->failed) return 0;
	jclass type = (*j->env)->GetObjectClass(j->env, of);
	jfieldID id = (*j->env)->GetStaticFieldID(j->env, type, field, "I");
	note(j, field);
	return j->failed ? 0 : (*j->env)->GetStaticIntField(j->env, type, id);
}

jstring still_text(still_java *j, const char *text) {
	if (j->failed) return NULL;
	jstring s = (*j->env)->NewStringUTF(j->env, text);
	note(j, "NewStringUTF");
	return s;
}

jobjectArray still_texts(still_java *j, const char *one, const char *two) {
	jclass type = class_of(j, "java/lang/String");
	if (!type) return NULL;
	jsize count = two ? 2 : 1;
	jobjectArray list = (*j->env)->NewObjectArray(j->env, count, type, NULL);
	note(j, "NewObjectArray");
	const char *each[] = {one, two};
	for (jsize i = 0; i < count; i++) {
		jstring s = still_text(j, each[i]);
		if (j->failed) return NULL;
		(*j->env)->SetObjectArrayElement(j->env, list, i, s);
		note(j, "SetObjectArrayElement");
	}
	return list;
}

jbyteArray still_bytes(still_java *j, const void *bytes, int length) {
	if (j->failed) return NULL;
	jbyteArray list = (*j->env)->NewByteArray(j->env, length);
	note(j, "NewByteArray");
	if (j->failed) return NULL;
	(*j->env)->SetByteArrayRegion(j->env, list, 0, length, bytes);
	note(j, "SetByteArrayRegion");
	return list;
}
