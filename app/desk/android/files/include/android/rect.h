/* Stands in for the NDK's header. */
#ifndef STAND_IN_ANDROID_RECT_H
#define STAND_IN_ANDROID_RECT_H
#include <stdint.h>
typedef struct ARect { int32_t left, top, right, bottom; } ARect;
#endif
