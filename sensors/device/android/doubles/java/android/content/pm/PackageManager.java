package android.content.pm;

import android.content.Intent;

public class PackageManager {
	public Intent getLaunchIntentForPackage(String name) { return new Intent("android.intent.action.MAIN").setPackage(name); }
}
