#ifndef TRIAL_STAT_H
#define TRIAL_STAT_H
#include <sys/types.h>
#include <time.h>
struct stat {
	dev_t st_dev;
	ino_t st_ino;
	mode_t st_mode;
	nlink_t st_nlink;
	uid_t st_uid;
	gid_t st_gid;
	dev_t st_rdev;
	unsigned long __pad1;
	off_t st_size;
	int st_blksize, __pad2;
	long st_blocks;
	struct timespec st_atim, st_mtim, st_ctim;
	unsigned int __unused4, __unused5;
};
#define S_IFMT 00170000
#define S_IFDIR 0040000
#define S_IFREG 0100000
#define S_IRWXU 0700
#define S_ISDIR(m) (((m) & S_IFMT) == S_IFDIR)
#define S_ISREG(m) (((m) & S_IFMT) == S_IFREG)
int stat(const char *path, struct stat *to);
int fstat(int fd, struct stat *to);
int mkdir(const char *path, mode_t mode);
#endif
