package android.app;

import stage.Stage;

public class Activity extends android.content.Context {
	public final void requestPermissions(String[] names, int code) {
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

	public void startActivity(android.content.Intent sheet) {
		android.content.Intent send = sheet.inside;
		Stage.set("shared", String.join(" ", send.action, send.type, send.stream.text, String.valueOf(send.flags)));
	}

	public boolean shouldShowRequestPermissionRationale(String name) { return Stage.is("refused"); }
}
