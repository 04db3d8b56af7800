package android.app;

import stage.Stage;

public class ApplicationExitInfo {
	public int getReason() { return Stage.number("exit"); }
}
