#ifndef TRIAL_DIRENT_H
#define TRIAL_DIRENT_H
#include <stdio.h>
#include <sys/types.h>
struct dirent {
	uint64_t d_ino;
	int64_t d_off;
	unsigned short d_reclen;
	unsigned char d_type;
	char d_name[256];
};
typedef struct DIR DIR;
DIR *opendir(const char *path);
struct dirent *readdir(DIR *d);
int closedir(DIR *d);
#endif
