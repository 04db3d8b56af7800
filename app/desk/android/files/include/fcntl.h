#ifndef TRIAL_FCNTL_H
#define TRIAL_FCNTL_H
#include <sys/types.h>
#define O_RDONLY 0
#define O_WRONLY 1
#define O_RDWR 2
#define O_CREAT 0100
#define O_CLOEXEC 02000000
int open(const char *path, int flags, ...);
#endif
