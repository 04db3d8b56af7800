#ifndef TRIAL_STRING_H
#define TRIAL_STRING_H
#include <stddef.h>
#include <sys/cdefs.h>
void *memcpy(void *to, const void *from, size_t n);
void *memmove(void *to, const void *from, size_t n);
void *memset(void *to, int c, size_t n);
int memcmp(const void *a, const void *b, size_t n);
void *memchr(const void *s, int c, size_t n);
size_t strlen(const char *s);
char *strcpy(char *to, const char *from);
char *strcat(char *to, const char *from);
int strcmp(const char *a, const char *b);
int strncmp(const char *a, const char *b, size_t n);
char *strchr(const char *s, int c);
char *strdup(const char *s);
char *strerror(int code);
#endif
