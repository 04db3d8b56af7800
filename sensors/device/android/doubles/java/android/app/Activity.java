package android.app;

import stage.Stage;

public class Activity extends android.content.Context {
	public final void requestPermissions(String[] names, int code) {
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

	/** The question takes the screen until it is answered, unless the rider has forbidden to be asked. */
	private void askToHear() {
		Stage.count("asked to hear");
		String answer = Stage.get("answer to hear");
		if (answer.equals("never ask")) return;
		new Thread(() -> {
			try {
				Thread.sleep(200);
				Stage.set("question open", "yes");
				if (answer.isEmpty()) return;
				Thread.sleep(500);
			} catch (InterruptedException e) { return; }
			if (answer.equals("yes")) Stage.set("may hear", "yes");
			Stage.set("question open", "no");
		}).start();
	}

	public boolean hasWindowFocus() { return !Stage.is("question open"); }

	public void startActivity(android.content.Intent sheet) {
		android.content.Intent send = sheet.inside;
		Stage.set("shared", String.join(" ", send.action, send.type, send.stream.text, String.valueOf(send.flags)));
	}

	public boolean shouldShowRequestPermissionRationale(String name) { return Stage.is("refused"); }
}
