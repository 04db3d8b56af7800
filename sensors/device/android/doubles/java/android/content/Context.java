package android.content;

import stage.Stage;

public class Context {
	private static final Context APPLICATION = new Context();

	public Context getApplicationContext() { return APPLICATION; }
	public java.io.File getFilesDir() { return new java.io.File("/data/user/0/stillair.phone/files"); }
	public String getPackageName() { return "stillair.phone"; }

	public Object getSystemService(String name) {
		switch (name) {
		case "location": return new android.location.LocationManager();
		case "vibrator": return new android.os.Vibrator();
		case "audio": return new android.media.AudioManager();
		case "power": return new android.os.PowerManager();
		case "notification": return new android.app.NotificationManager();
		case "activity": return new android.app.ActivityManager();
		default: return null;
		}
	}

	public ComponentName startService(Intent intent) { return stage.Services.start(intent); }
	public boolean stopService(Intent intent) { return stage.Services.stop(); }
	public android.content.pm.PackageManager getPackageManager() { return new android.content.pm.PackageManager(); }
	public android.content.res.Resources getResources() { return new android.content.res.Resources(); }
	public ContentResolver getContentResolver() { return new ContentResolver(); }

	/** 0 is PERMISSION_GRANTED. */
	public int checkSelfPermission(String name) {
		if (name.equals("android.permission.RECORD_AUDIO")) return Stage.is("may hear") ? 0 : -1;
		if (name.equals("android.permission.ACCESS_COARSE_LOCATION")) return Stage.is("allowed") || Stage.is("approximate") ? 0 : -1;
		if (!name.equals("android.permission.ACCESS_FINE_LOCATION")) throw new IllegalArgumentException(name);
		return Stage.is("allowed") ? 0 : -1;
	}
}
