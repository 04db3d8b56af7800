#ifndef TRIAL_ERRNO_H
#define TRIAL_ERRNO_H
#include <sys/cdefs.h>
int *__errno(void);
#define errno (*__errno())
#define EPERM 1
#define ENOENT 2
#define EINTR 4
#define EIO 5
#define EBADF 9
#define EAGAIN 11
#define ENOMEM 12
#define EACCES 13
#define EBUSY 16
#define EEXIST 17
#define EINVAL 22
#define ENOSPC 28
#define ERANGE 34
#define ENOSYS 38
#define EOVERFLOW 75
#define ETIMEDOUT 110
#endif
