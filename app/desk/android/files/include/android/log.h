/* Stands in for the NDK's header: what the Go runtime and the toolkit call. */
#ifndef STAND_IN_ANDROID_LOG_H
#define STAND_IN_ANDROID_LOG_H
#include <stdarg.h>
enum { ANDROID_LOG_UNKNOWN, ANDROID_LOG_DEFAULT, ANDROID_LOG_VERBOSE, ANDROID_LOG_DEBUG, ANDROID_LOG_INFO,
	ANDROID_LOG_WARN, ANDROID_LOG_ERROR, ANDROID_LOG_FATAL, ANDROID_LOG_SILENT };
int __android_log_write(int priority, const char *tag, const char *text);
int __android_log_print(int priority, const char *tag, const char *format, ...);
int __android_log_vprint(int priority, const char *tag, const char *format, va_list args);
#endif
