package android.content;

import android.net.Uri;
import android.os.Parcelable;

public class Intent {
	public final String action;
	public String to, type;
	public Uri stream;
	public int flags;
	public Intent inside;

	public Intent(String action) {
		if (action == null) throw new NullPointerException("action");
		this.action = action;
	}

	public Intent setPackage(String name) { to = name; return this; }
	public Intent setType(String name) { type = name; return this; }
	public Intent addFlags(int more) { flags |= more; return this; }

	public Intent putExtra(String name, Parcelable value) {
		if (name.equals("android.intent.extra.STREAM")) stream = (Uri) value;
		return this;
	}

	public static Intent createChooser(Intent target, CharSequence title) {
		Intent sheet = new Intent("android.intent.action.CHOOSER");
		sheet.inside = target;
		return sheet;
	}
}
