package android.app;

import android.content.Context;
import android.graphics.drawable.Icon;
import android.os.Parcelable;
import stage.Stage;

public class Notification implements Parcelable {
	private String words = "";
	public PendingIntent end;

	/** What a rider sees, for the tests. */
	void shown() { Stage.set("notification", words); }

	public static class Action {
		String title;
		PendingIntent does;

		public static class Builder {
			private final Action made = new Action();
			public Builder(Icon icon, CharSequence title, PendingIntent does) { made.title = title.toString(); made.does = does; }
			public Builder setAuthenticationRequired(boolean on) { made.title += on ? ", unlocked" : ""; return this; }
			public Action build() { return made; }
		}
	}

	public static class Builder {
		private final Notification made = new Notification();
		private int icon;

		public Builder(Context context, String channel) {
			if (!Stage.get("channel").startsWith(channel + ":")) throw new IllegalArgumentException("no channel " + channel);
		}

		private Builder add(String word) { made.words += word + "|"; return this; }
		public Builder setSmallIcon(int id) { icon = id; return this; }
		public Builder setContentTitle(CharSequence s) { return add(s.toString()); }
		public Builder setContentText(CharSequence s) { return add(s.toString()); }
		public Builder setOngoing(boolean on) { return this; }
		public Builder setOnlyAlertOnce(boolean on) { return this; }
		public Builder setVisibility(int how) { return this; }
		public Builder setWhen(long ms) { return add(String.valueOf(ms)); }
		public Builder setShowWhen(boolean on) { return this; }
		public Builder setUsesChronometer(boolean on) { return this; }
		public Builder setContentIntent(PendingIntent p) { return add(p.intent.action); }
		public Builder setForegroundServiceBehavior(int how) { return add(how == 1 ? "at once" : "later"); }
		public Builder addAction(Action a) { made.end = a.does; return add(a.title); }

		/** A notification without an icon brings a service down. */
		public Notification build() {
			if (icon == 0) throw new IllegalArgumentException("Invalid notification (no valid small icon)");
			return made;
		}
	}
}
