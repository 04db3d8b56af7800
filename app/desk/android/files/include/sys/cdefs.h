/* Minimal headers of Android's C library on arm64, for a trial package made
 * without the NDK: what Go's runtime, the toolkit and our own driver use and
 * nothing else. Sizes and values are those of bionic's public headers; sizes.c
 * holds them. */
#ifndef TRIAL_CDEFS_H
#define TRIAL_CDEFS_H
#define __BIONIC__ 1
#define __INTRODUCED_IN(level)
#define __RENAME_IF_FILE_OFFSET64(name)
#define __BEGIN_DECLS
#define __END_DECLS
#endif
