package android.os;

import stage.Stage;

public class PowerManager {
	public class WakeLock {
		public void acquire() { Stage.count("held"); }
		public void release() { Stage.count("let go"); }
	}

	/** 1 is PARTIAL_WAKE_LOCK: the processor, not the screen. */
	public WakeLock newWakeLock(int flags, String tag) {
		if (flags != 1 || tag == null) throw new IllegalArgumentException("flags " + flags);
		if (Stage.is("no wake lock")) throw new SecurityException("needs android.permission.WAKE_LOCK");
		return new WakeLock();
	}

	public boolean isInteractive() { return !Stage.is("dark"); }
	public boolean isPowerSaveMode() { return Stage.is("saving"); }
	public int getLocationPowerSaveMode() { return Stage.number("location mode"); }
}
