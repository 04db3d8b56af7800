#ifndef TRIAL_DLFCN_H
#define TRIAL_DLFCN_H
#include <sys/cdefs.h>
#define RTLD_DEFAULT ((void *)0)
#define RTLD_LAZY 1
#define RTLD_NOW 2
void *dlopen(const char *name, int how);
void *dlsym(void *library, const char *name);
int dlclose(void *library);
char *dlerror(void);
#endif
