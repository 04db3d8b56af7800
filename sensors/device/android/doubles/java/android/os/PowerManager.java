package android.os;

import stage.Stage;

public class PowerManager {
	public class WakeLock {
		public void acquire() { Stage.count("lit"); }
		public void release() { Stage.count("dark"); }
	}

	public WakeLock newWakeLock(int flags, String tag) {
		if ((flags & 0xffff) != 0x0a || tag == null) throw new IllegalArgumentException("flags " + flags);
		if (Stage.is("no wake lock")) throw new SecurityException("needs android.permission.WAKE_LOCK");
		return new WakeLock();
	}
}
