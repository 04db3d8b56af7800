package android.app;

import stage.Stage;

public class NotificationManager {
	public void createNotificationChannel(NotificationChannel c) { Stage.set("channel", c.id + ": " + c.name); }
	public boolean areNotificationsEnabled() { return !Stage.is("no notifications"); }

	public void notify(int id, Notification n) {
		if (id != 1) throw new IllegalArgumentException("the service's notification is number 1");
		n.shown();
	}
}
