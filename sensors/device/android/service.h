/* The service that keeps the app going while a ride is recorded with the screen
 * off, and what the system may do to it. Plain C. */
#ifndef STILL_SERVICE_H
#define STILL_SERVICE_H

#include <jni.h>
#include <stdint.h>

/* What is shown while the service runs, and what it is for. */
typedef struct {
	const char *channel;      /* what the rider finds it under in the settings */
	const char *title, *text; /* of the notification */
	const char *end;          /* on its button */
	int64_t since_ms;         /* when the ride began, since 1970 */
	int64_t ride;             /* handed back with everything that happens */
	int types;                /* a sum of STILL_TYPE_… */
} still_ride;

enum { STILL_TYPE_LOCATION = 0x8, STILL_TYPE_MICROPHONE = 0x80 };

/* still_ride_begin asks the system to start the service, or gives a running one
 * other types and another notification. The app must be visible. The service
 * says itself whether it came to run (told, in service.go). Each returns 1, or 0
 * with why in words. */
int still_ride_begin(JNIEnv *env, jobject context, const still_ride *r, char *why, int room);
/* still_ride_show changes the notification of a running service. */
int still_ride_show(JNIEnv *env, jobject context, const still_ride *r, char *why, int room);
int still_ride_end(JNIEnv *env, jobject context, char *why, int room);

/* How the phone is set: -1 where its Android does not tell. */
typedef struct {
	int notifications;  /* 1: they are shown */
	int saving;         /* 1: Battery Saver is on */
	int location_mode;  /* what Battery Saver does to the location: LOCATION_MODE_… of PowerManager */
	int restricted;     /* 1: the rider forbade the app to run in the background */
	int lit;            /* 1: the screen is on */
	int approximate;    /* 1: of the location only the coarse one may be used */
} still_settings;
int still_settings_read(JNIEnv *env, jobject context, still_settings *s, char *why, int room);

/* still_notify_ask puts the question for notifications on the screen, where
 * Android has one (from 13 on). */
int still_notify_ask(JNIEnv *env, jobject activity, char *why, int room);

/* still_last_exit tells why the app's process ended the last time, by the
 * numbers of ApplicationExitInfo; -1 where it is not known. */
int still_last_exit(JNIEnv *env, jobject context);

/* still_words copies a text of Java's; text may be NULL. */
void still_words(JNIEnv *env, jstring text, char *to, int room);

#endif
