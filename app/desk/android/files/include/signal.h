#ifndef TRIAL_SIGNAL_H
#define TRIAL_SIGNAL_H
#include <sys/types.h>
typedef unsigned long sigset_t;
typedef union sigval { int sival_int; void *sival_ptr; } sigval_t;
typedef struct siginfo {
	int si_signo, si_errno, si_code, __pad0;
	union { int __room[28]; void *si_addr; };
} siginfo_t;
struct sigaction {
	int sa_flags;
	union {
		void (*sa_handler)(int);
		void (*sa_sigaction)(int, siginfo_t *, void *);
	};
	sigset_t sa_mask;
	void (*sa_restorer)(void);
};
typedef struct { void *ss_sp; int ss_flags; size_t ss_size; } stack_t;
#define SIGABRT 6
#define SIGFPE 8
#define SIGSEGV 11
#define SIGPIPE 13
#define SIG_DFL ((void (*)(int))0)
#define SIG_BLOCK 0
#define SIG_UNBLOCK 1
#define SIG_SETMASK 2
#define SA_SIGINFO 4
#define SA_ONSTACK 0x08000000
#define SA_RESTART 0x10000000
int sigaction(int number, const struct sigaction *now, struct sigaction *before);
int sigemptyset(sigset_t *set);
int sigfillset(sigset_t *set);
int sigaddset(sigset_t *set, int number);
int sigismember(const sigset_t *set, int number);
int pthread_sigmask(int how, const sigset_t *set, sigset_t *before);
#endif
