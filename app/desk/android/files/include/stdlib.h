#ifndef TRIAL_STDLIB_H
#define TRIAL_STDLIB_H
#include <stddef.h>
#include <sys/types.h>
void *malloc(size_t n);
void *calloc(size_t count, size_t n);
void *realloc(void *p, size_t n);
void free(void *p);
void abort(void) __attribute__((noreturn));
void exit(int code) __attribute__((noreturn));
char *getenv(const char *name);
int setenv(const char *name, const char *value, int replace);
int unsetenv(const char *name);
int clearenv(void);
long long llabs(long long x);
#endif
