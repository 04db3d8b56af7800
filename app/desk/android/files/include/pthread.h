#ifndef TRIAL_PTHREAD_H
#define TRIAL_PTHREAD_H
#include <sys/types.h>
#include <time.h>
typedef long pthread_t;
typedef int pthread_key_t;
typedef struct {
	uint32_t flags;
	void *stack_base;
	size_t stack_size, guard_size;
	int32_t sched_policy, sched_priority;
	char __reserved[16];
} pthread_attr_t;
typedef struct { int32_t __private[10]; } pthread_mutex_t;
typedef struct { int32_t __private[12]; } pthread_cond_t;
typedef long pthread_mutexattr_t, pthread_condattr_t;
#define PTHREAD_MUTEX_INITIALIZER {{0}}
#define PTHREAD_COND_INITIALIZER {{0}}
#define PTHREAD_CREATE_JOINABLE 0
#define PTHREAD_CREATE_DETACHED 1
int pthread_create(pthread_t *thread, const pthread_attr_t *how, void *(*run)(void *), void *arg);
int pthread_join(pthread_t thread, void **result);
int pthread_detach(pthread_t thread);
pthread_t pthread_self(void);
int pthread_getattr_np(pthread_t thread, pthread_attr_t *to);
int pthread_attr_init(pthread_attr_t *a);
int pthread_attr_destroy(pthread_attr_t *a);
int pthread_attr_setdetachstate(pthread_attr_t *a, int state);
int pthread_attr_getstack(const pthread_attr_t *a, void **base, size_t *size);
int pthread_attr_getstacksize(const pthread_attr_t *a, size_t *size);
int pthread_key_create(pthread_key_t *key, void (*done)(void *));
int pthread_setspecific(pthread_key_t key, const void *value);
void *pthread_getspecific(pthread_key_t key);
int pthread_mutex_init(pthread_mutex_t *m, const pthread_mutexattr_t *how);
int pthread_mutex_destroy(pthread_mutex_t *m);
int pthread_mutex_lock(pthread_mutex_t *m);
int pthread_mutex_unlock(pthread_mutex_t *m);
int pthread_cond_init(pthread_cond_t *c, const pthread_condattr_t *how);
int pthread_cond_destroy(pthread_cond_t *c);
int pthread_cond_wait(pthread_cond_t *c, pthread_mutex_t *m);
int pthread_cond_signal(pthread_cond_t *c);
int pthread_cond_broadcast(pthread_cond_t *c);
#endif
