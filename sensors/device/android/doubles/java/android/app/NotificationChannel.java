package android.app;

public class NotificationChannel {
	final String id, name;

	public NotificationChannel(String id, CharSequence name, int importance) {
		if (importance != 2) throw new IllegalArgumentException("a ride makes no noise: IMPORTANCE_LOW");
		this.id = id;
		this.name = name.toString();
	}
}
