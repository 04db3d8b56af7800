#ifndef TRIAL_UNISTD_H
#define TRIAL_UNISTD_H
#include <sys/types.h>
extern char **environ;
ssize_t read(int fd, void *to, size_t n);
ssize_t write(int fd, const void *from, size_t n);
int close(int fd);
int setuid(uid_t u);
int seteuid(uid_t u);
int setreuid(uid_t r, uid_t e);
int setresuid(uid_t r, uid_t e, uid_t s);
int setgid(gid_t g);
int setegid(gid_t g);
int setregid(gid_t r, gid_t e);
int setresgid(gid_t r, gid_t e, gid_t s);
int setgroups(size_t n, const gid_t *groups);
#endif
