package android.app;

import stage.Stage;

public class Activity extends android.content.Context {
	public final void requestPermissions(String[] names, int code) {
		if (names.length == 1 && names[0].equals("android.permission.POST_NOTIFICATIONS")) {
			Stage.count("asked to notify");
			return;
		}
		if (names.length == 1 && names[0].equals("android.permission.RECORD_AUDIO")) {
			askToHear();
			return;
		}
		Stage.count("asked");
		if (names.length != 2 || !names[0].endsWith("FINE_LOCATION") || !names[1].endsWith("COARSE_LOCATION"))
			throw new IllegalArgumentException(String.join(",", names));
		String answer = Stage.get("answer");
		if (answer.isEmpty()) return;
		new Thread(() -> {
			try { Thread.sleep(300); } catch (InterruptedException e) { return; }
			Stage.set(answer.equals("yes") ? "allowed" : "refused", "yes");
		}).start();
	}

	/** Where the rider has forbidden to be asked, Android answers by itself. */
	private void askToHear() {
		Stage.count("asked to hear");
		String answer = Stage.get("answer to hear");
		if (answer.isEmpty()) return;
		new Thread(() -> {
			try { Thread.sleep(answer.equals("never ask") ? 50 : 500); } catch (InterruptedException e) { return; }
			if (answer.equals("yes")) Stage.set("may hear", "yes");
			boolean put = !answer.equals("another is open");
			onRequestPermissionsResult(1, new String[put ? 1 : 0], new int[put ? 1 : 0]);
		}).start();
	}

	public void onRequestPermissionsResult(int code, String[] names, int[] results) { Stage.count("answers"); }

	public void startActivity(android.content.Intent sheet) {
		android.content.Intent send = sheet.inside;
		Stage.set("shared", String.join(" ", send.action, send.type, send.stream.text, String.valueOf(send.flags)));
	}

	public boolean shouldShowRequestPermissionRationale(String name) { return Stage.is("refused"); }
}
