#ifndef TRIAL_TYPES_H
#define TRIAL_TYPES_H
#include <stddef.h>
#include <stdint.h>
#include <sys/cdefs.h>
typedef long ssize_t;
typedef int pid_t;
typedef unsigned int uid_t, gid_t, mode_t, nlink_t, useconds_t;
typedef unsigned long dev_t, ino_t;
typedef long off_t, time_t, suseconds_t, blkcnt_t;
typedef int64_t off64_t;
typedef int blksize_t, clockid_t;
#endif
