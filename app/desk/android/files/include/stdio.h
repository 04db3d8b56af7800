#ifndef TRIAL_STDIO_H
#define TRIAL_STDIO_H
#include <stdarg.h>
#include <stddef.h>
#include <sys/cdefs.h>
typedef struct __sFILE FILE;
extern FILE *stdin, *stdout, *stderr;
int printf(const char *format, ...) __attribute__((format(printf, 1, 2)));
int fprintf(FILE *to, const char *format, ...) __attribute__((format(printf, 2, 3)));
int vfprintf(FILE *to, const char *format, va_list args);
int snprintf(char *to, size_t n, const char *format, ...) __attribute__((format(printf, 3, 4)));
int vsnprintf(char *to, size_t n, const char *format, va_list args);
int remove(const char *path);
#endif
