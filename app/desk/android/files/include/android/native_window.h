/* Stands in for the NDK's header. */
#ifndef STAND_IN_ANDROID_NATIVE_WINDOW_H
#define STAND_IN_ANDROID_NATIVE_WINDOW_H
#include <stdint.h>
#include <android/rect.h>
typedef struct ANativeWindow ANativeWindow;
int32_t ANativeWindow_getWidth(ANativeWindow *window);
int32_t ANativeWindow_getHeight(ANativeWindow *window);
int32_t ANativeWindow_getFormat(ANativeWindow *window);
int32_t ANativeWindow_setBuffersGeometry(ANativeWindow *window, int32_t width, int32_t height, int32_t format);
void ANativeWindow_acquire(ANativeWindow *window);
void ANativeWindow_release(ANativeWindow *window);
#endif
