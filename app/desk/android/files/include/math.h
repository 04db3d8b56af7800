#ifndef TRIAL_MATH_H
#define TRIAL_MATH_H
#include <sys/cdefs.h>
#define NAN __builtin_nanf("")
#define INFINITY __builtin_inff()
#define isnan(x) __builtin_isnan(x)
#endif
