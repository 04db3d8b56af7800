package stage;

import android.app.PendingIntent;
import android.app.Service;
import android.content.ComponentName;
import android.content.Intent;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** What the system does to the packed service, on a thread of its own as a phone has it. */
public class Services {
	private static final ExecutorService MAIN = Executors.newSingleThreadExecutor(work -> {
		Thread t = new Thread(work, "main");
		t.setDaemon(true);
		return t;
	});
	private static Service running; // on MAIN alone
	private static int starts;
	public static volatile PendingIntent end;

	private static void onMain(Runnable work) {
		Future<?> done = MAIN.submit(work);
		try {
			done.get();
		} catch (Exception e) {
			throw new IllegalStateException(e.getCause());
		}
	}

	private static void command(Intent intent, String name) {
		if (running == null) running = (Service) Stage.make(name);
		Stage.set("returned", String.valueOf(running.onStartCommand(intent, 0, ++starts)));
	}

	public static ComponentName start(Intent intent) {
		if (intent.name == null) throw new IllegalArgumentException("Service Intent must be explicit");
		if (Stage.is("hidden") && !Stage.is("foreground")) throw new IllegalStateException("Not allowed to start service: app is in background");
		MAIN.submit(() -> command(intent, intent.name));
		return new ComponentName();
	}

	public static boolean stop() {
		MAIN.submit(Services::destroy);
		return true;
	}

	public static void stopSelf() {
		Stage.count("stopped itself");
		MAIN.submit(Services::destroy);
	}

	private static void destroy() {
		if (running != null) running.onDestroy();
		running = null;
	}

	/** The rider touches the notification's button. */
	public static void touchEnd() { onMain(() -> command(end.intent, end.intent.name)); }
	/** The rider swipes the app away. */
	public static void swipe() { onMain(() -> running.onTaskRemoved(new Intent())); }
	/** The system starts the service anew with nothing. */
	public static void startWithNothing() { onMain(() -> command(null, "stillair.phone.RideService")); }
	/** The system ends the service. */
	public static void kill() { onMain(Services::destroy); }
	/** What was posted is done when this returns. */
	public static void settle() { onMain(() -> {}); onMain(() -> {}); }
	/** A service that an earlier test left. */
	public static void clear() { onMain(() -> running = null); }
}
