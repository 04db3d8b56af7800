package android.location;

import android.app.PendingIntent;
import java.util.List;
import stage.Stage;

/** A receiver with a fix every second, which is the last known one until the next. */
public class LocationManager {
	private static long start;
	private static Location last;

	private static void permitted() {
		if (!Stage.is("allowed")) throw new SecurityException("gps needs ACCESS_FINE_LOCATION");
	}

	public List<String> getAllProviders() { return Stage.providers(); }
	public boolean isProviderEnabled(String name) { return name.equals("gps") && !Stage.is("switched off"); }

	public void requestLocationUpdates(String name, long every, float travel, PendingIntent to) {
		permitted();
		if (!to.mutable) throw new IllegalArgumentException("an immutable intent cannot carry a location");
		if (!"stillair.phone".equals(to.to)) throw new IllegalArgumentException("intent for " + to.to);
		Stage.count("ordered");
		start = System.nanoTime();
		last = null;
	}

	public void removeUpdates(PendingIntent to) { Stage.count("removed"); }

	public synchronized Location getLastKnownLocation(String name) {
		permitted();
		int n = (int) ((System.nanoTime() - start) / 1000000000L);
		if (n == 0) return Stage.is("known before") ? new Location(start - 3600000000000L, n, false) : null;
		if (last == null || last.n != n) last = new Location(start + n * 1000000000L, n, Stage.is("bare"));
		return last;
	}
}
