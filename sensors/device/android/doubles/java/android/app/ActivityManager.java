package android.app;

import java.util.List;
import stage.Stage;

public class ActivityManager {
	public boolean isBackgroundRestricted() { return Stage.is("restricted"); }

	public List<ApplicationExitInfo> getHistoricalProcessExitReasons(String name, int pid, int most) {
		if (!name.equals("stillair.phone") || pid != 0 || most != 1) throw new IllegalArgumentException(name);
		return Stage.get("exit").isEmpty() ? List.of() : List.of(new ApplicationExitInfo());
	}
}
