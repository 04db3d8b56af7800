package android.os;

import stage.Stage;

public class Vibrator {
	public void vibrate(long ms) { Stage.set("buzzed", String.valueOf(ms)); }
}
