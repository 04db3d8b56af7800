//go:build android || doubles

#include "notice.h"

#include <stddef.h>

#define TEXT "Ljava/lang/String;"
#define CHARS "Ljava/lang/CharSequence;"
#define CONTEXT "Landroid/content/Context;"
#define INTENT "Landroid/content/Intent;"
#define PENDING "Landroid/app/PendingIntent;"
#define BUILDER "Landroid/app/Notification$Builder;"
#define ACTION "Landroid/app/Notification$Action$Builder;"
#define CHANNEL "ride"

enum { IMPORTANCE_LOW = 2, VISIBILITY_PUBLIC = 1, AT_ONCE = 1, API_S = 31 };
enum { FLAG_IMMUTABLE = 1 << 26, FLAG_UPDATE_CURRENT = 1 << 27 };

jobject still_service_intent(still_java *j, jobject app, const char *action) {
	jobject intent = still_new(j, "android/content/Intent", "()V");
	still_object(j, intent, "setClassName", "(" CONTEXT TEXT ")" INTENT, app, still_text(j, STILL_SERVICE));
	if (action) still_object(j, intent, "setAction", "(" TEXT ")" INTENT, still_text(j, action));
	return intent;
}

/* open_channel makes the channel, which is silent: a ride needs no sound. One
 * that is there already takes the new name and keeps what the rider set. */
static void open_channel(still_java *j, jobject app, const char *name) {
	jobject channel = still_new(j, "android/app/NotificationChannel", "(" TEXT CHARS "I)V",
		still_text(j, CHANNEL), still_text(j, name), (jint)IMPORTANCE_LOW);
	jobject manager = still_object(j, app, "getSystemService", "(" TEXT ")Ljava/lang/Object;", still_text(j, "notification"));
	still_void(j, manager, "createNotificationChannel", "(Landroid/app/NotificationChannel;)V", channel);
}

static void add_icon(still_java *j, jobject app, jobject builder, jobject package) {
	jobject resources = still_object(j, app, "getResources", "()Landroid/content/res/Resources;");
	jint icon = still_int(j, resources, "getIdentifier", "(" TEXT TEXT TEXT ")I",
		still_text(j, "status"), still_text(j, "drawable"), package);
	still_object(j, builder, "setSmallIcon", "(I)" BUILDER, icon);
}

/* add_ways has a touch open the app, and the button end the ride. From Android 12
 * on the phone has to be unlocked for the button: in a pocket anything may touch
 * a lock screen. */
static void add_ways(still_java *j, jobject app, jobject builder, jobject package, const char *end, jint api) {
	jint flags = FLAG_IMMUTABLE | FLAG_UPDATE_CURRENT;
	jobject manager = still_object(j, app, "getPackageManager", "()Landroid/content/pm/PackageManager;");
	jobject open = still_object(j, manager, "getLaunchIntentForPackage", "(" TEXT ")" INTENT, package);
	jobject to_app = still_static(j, "android/app/PendingIntent", "getActivity", "(" CONTEXT "I" INTENT "I)" PENDING, app, (jint)0, open, flags);
	still_object(j, builder, "setContentIntent", "(" PENDING ")" BUILDER, to_app);
	jobject to_end = still_static(j, "android/app/PendingIntent", "getService", "(" CONTEXT "I" INTENT "I)" PENDING,
		app, (jint)0, still_service_intent(j, app, STILL_END), flags);
	jobject action = still_new(j, "android/app/Notification$Action$Builder", "(Landroid/graphics/drawable/Icon;" CHARS PENDING ")V",
		(jobject)NULL, still_text(j, end), to_end);
	if (api >= API_S) still_object(j, action, "setAuthenticationRequired", "(Z)" ACTION, (jint)1);
	still_object(j, builder, "addAction", "(Landroid/app/Notification$Action;)" BUILDER,
		still_object(j, action, "build", "()Landroid/app/Notification$Action;"));
}

jobject still_notice(still_java *j, jobject app, const still_ride *r) {
	open_channel(j, app, r->channel);
	jobject package = still_object(j, app, "getPackageName", "()" TEXT);
	jobject b = still_new(j, "android/app/Notification$Builder", "(" CONTEXT TEXT ")V", app, still_text(j, CHANNEL));
	add_icon(j, app, b, package);
	still_object(j, b, "setContentTitle", "(" CHARS ")" BUILDER, still_text(j, r->title));
	still_object(j, b, "setContentText", "(" CHARS ")" BUILDER, still_text(j, r->text));
	still_object(j, b, "setOngoing", "(Z)" BUILDER, (jint)1);
	still_object(j, b, "setOnlyAlertOnce", "(Z)" BUILDER, (jint)1);
	still_object(j, b, "setVisibility", "(I)" BUILDER, (jint)VISIBILITY_PUBLIC);
	/* A clock that the system counts on by itself. */
	still_object(j, b, "setWhen", "(J)" BUILDER, (jlong)r->since_ms);
	still_object(j, b, "setShowWhen", "(Z)" BUILDER, (jint)1);
	still_object(j, b, "setUsesChronometer", "(Z)" BUILDER, (jint)1);
	jint api = still_constant(j, "android/os/Build$VERSION", "SDK_INT");
	add_ways(j, app, b, package, r->end, api);
	if (api >= API_S)
		still_object(j, b, "setForegroundServiceBehavior", "(I)" BUILDER, (jint)AT_ONCE);
	return still_object(j, b, "build", "()Landroid/app/Notification;");
}
