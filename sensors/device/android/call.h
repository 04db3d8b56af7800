/* Calls into Java that look after exceptions. */
#ifndef STILL_CALL_H
#define STILL_CALL_H

#include <jni.h>

/* A caller's view of Java: once something has been thrown, failed stays set,
 * words say what, and every further call does nothing and gives nothing. */
typedef struct {
	JNIEnv *env;
	int failed;
	char words[200];
} still_java;

jobject still_object(still_java *j, jobject of, const char *method, const char *signature, ...);
jint still_int(still_java *j, jobject of, const char *method, const char *signature, ...);
jlong still_long(still_java *j, jobject of, const char *method, const char *signature, ...);
jdouble still_double(still_java *j, jobject of, const char *method, const char *signature, ...);
jfloat still_float(still_java *j, jobject of, const char *method, const char *signature, ...);
jboolean still_boolean(still_java *j, jobject of, const char *method, const char *signature, ...);
void still_void(still_java *j, jobject of, const char *method, const char *signature, ...);
jobject still_static(still_java *j, const char *class_name, const char *method, const char *signature, ...);
jobject still_new(still_java *j, const char *class_name, const char *signature, ...);
jobject still_static_object(still_java *j, const char *class_name, const char *field, const char *signature);
jint still_constant(still_java *j, const char *class_name, const char *field);
/* still_static_int reads a static field of an object's own class, which a thread
 * of ours does not find by its name. */
jint still_static_int(still_java *j, jobject of, const char *field);
jstring still_text(still_java *j, const char *text);
/* two may be NULL. */
jobjectArray still_texts(still_java *j, const char *one, const char *two);
jbyteArray still_bytes(still_java *j, const void *bytes, int length);

#endif
