/* What Go's runtime, the toolkit and our driver rely on of Android's C library
 * on arm64. Values: bionic's public headers, as measured with them. Compiled
 * before every package, with the trial's own headers as with an NDK's. */
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <signal.h>
#include <stddef.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <time.h>

#include <android/sensor.h>

#define SIZE(type, bytes) _Static_assert(sizeof(type) == (bytes), "size of " #type)
#define VALUE(name, value) _Static_assert((name) == (value), "value of " #name)
#define PLACE(type, field, bytes) _Static_assert(offsetof(type, field) == (bytes), "place of " #field)

SIZE(struct sigaction, 32);
PLACE(struct sigaction, sa_sigaction, 8);
PLACE(struct sigaction, sa_mask, 16);
SIZE(sigset_t, 8);
SIZE(siginfo_t, 128);
SIZE(pthread_mutex_t, 40);
SIZE(pthread_cond_t, 48);
SIZE(pthread_attr_t, 56);
SIZE(pthread_t, 8);
SIZE(pthread_key_t, 4);
SIZE(struct stat, 128);
PLACE(struct stat, st_mode, 16);
PLACE(struct stat, st_size, 48);
SIZE(struct dirent, 280);
PLACE(struct dirent, d_name, 19);
SIZE(struct tm, 56);
PLACE(struct tm, tm_gmtoff, 40);
SIZE(struct timespec, 16);
SIZE(time_t, 8);
SIZE(long, 8);
SIZE(void *, 8);

/* Android's own, with which a sensor hands its events over. */
SIZE(ASensorEvent, 104);
PLACE(ASensorEvent, type, 8);
PLACE(ASensorEvent, timestamp, 16);
PLACE(ASensorEvent, acceleration, 24);
PLACE(ASensorEvent, pressure, 24);

VALUE(EAGAIN, 11);
VALUE(SIG_BLOCK, 0);
VALUE(SIG_SETMASK, 2);
VALUE(SA_SIGINFO, 4);
VALUE(SA_ONSTACK, 0x08000000);
VALUE(SA_RESTART, 0x10000000);
VALUE(CLOCK_MONOTONIC, 1);
VALUE(CLOCK_BOOTTIME, 7);
VALUE(PROT_READ | PROT_WRITE, 3);
VALUE(MAP_PRIVATE | MAP_ANONYMOUS, 0x22);
VALUE(PTHREAD_CREATE_DETACHED, 1);
