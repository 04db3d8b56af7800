package android.app;

import android.content.Context;
import android.content.Intent;
import android.os.Build;
import android.os.IBinder;
import stage.Stage;

/** With the rules of Android 14 for types, and that a hidden app may not begin to use the microphone. */
public abstract class Service extends Context {
	public abstract IBinder onBind(Intent intent);
	public int onStartCommand(Intent intent, int flags, int id) { return 0; }
	public void onTaskRemoved(Intent root) {}
	public void onDestroy() { Stage.count("destroyed"); }
	public final void stopSelf() { stage.Services.stopSelf(); }

	public final void startForeground(int id, Notification n) {
		if (Build.VERSION.SDK_INT >= 34) throw new SecurityException("a type has to be given");
		shown(id, n, "without a type");
	}

	public final void startForeground(int id, Notification n, int types) {
		if (Build.VERSION.SDK_INT < 29) throw new NoSuchMethodError("startForeground with types");
		if (Build.VERSION.SDK_INT >= 34) {
			if ((types & 0x8) != 0 && !Stage.is("allowed")) throw new SecurityException("location needs ACCESS_FINE_LOCATION");
			if ((types & 0x80) != 0 && !Stage.is("may hear")) throw new SecurityException("microphone needs RECORD_AUDIO");
		}
		if ((types & ~0x88) != 0) throw new IllegalArgumentException("types " + types + " are not in the manifest");
		if ((types & 0x80) != 0 && Stage.is("hidden")) throw new SecurityException("microphone from the background");
		shown(id, n, String.valueOf(types));
	}

	private void shown(int id, Notification n, String types) {
		if (id == 0 || n == null) throw new IllegalArgumentException("notification " + id);
		Stage.set("types", types);
		stage.Services.end = n.end;
		n.shown();
	}
}
