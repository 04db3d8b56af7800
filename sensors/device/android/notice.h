/* The notification of a recording. */
#ifndef STILL_NOTICE_H
#define STILL_NOTICE_H

#include "call.h"
#include "service.h"

#define STILL_SERVICE "stillair.phone.RideService"
#define STILL_END "stillair.END" /* what the button sends to the service */

enum { STILL_NOTICE = 1 }; /* its number, here and in RideService.smali */

/* still_service_intent is addressed to the service; action may be NULL. */
jobject still_service_intent(still_java *j, jobject app, const char *action);

/* still_notice makes the notification, and its channel where that is new. */
jobject still_notice(still_java *j, jobject app, const still_ride *r);

#endif
