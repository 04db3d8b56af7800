#ifndef TRIAL_MMAN_H
#define TRIAL_MMAN_H
#include <sys/types.h>
#define PROT_NONE 0
#define PROT_READ 1
#define PROT_WRITE 2
#define PROT_EXEC 4
#define MAP_SHARED 1
#define MAP_PRIVATE 2
#define MAP_FIXED 0x10
#define MAP_ANONYMOUS 0x20
#define MAP_FAILED ((void *)-1)
void *mmap(void *at, size_t length, int access, int flags, int fd, off_t offset);
int munmap(void *at, size_t length);
#endif
