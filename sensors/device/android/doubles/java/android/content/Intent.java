package android.content;

import android.net.Uri;
import android.os.Parcelable;

public class Intent {
	public String action;
	public String to, type;
	public Uri stream;
	public int flags;
	public Intent inside;
	public String name; // of the class it is addressed to
	private final java.util.HashMap<String, Object> extras = new java.util.HashMap<>();

	public Intent() {}

	public Intent(String action) {
		if (action == null) throw new NullPointerException("action");
		this.action = action;
	}

	public Intent setPackage(String name) { to = name; return this; }
	public Intent setType(String name) { type = name; return this; }
	public Intent addFlags(int more) { flags |= more; return this; }

	public Intent putExtra(String name, Parcelable value) {
		if (name.equals("android.intent.extra.STREAM")) stream = (Uri) value;
		extras.put(name, value);
		return this;
	}

	public Intent putExtra(String name, int value) { extras.put(name, value); return this; }
	public Intent putExtra(String name, long value) { extras.put(name, value); return this; }
	public Intent setClassName(Context in, String name) { this.name = name; return this; }
	public Intent setAction(String action) { this.action = action; return this; }
	public String getAction() { return action; }

	@SuppressWarnings("unchecked")
	public <T extends Parcelable> T getParcelableExtra(String name) { return (T) extras.get(name); }
	public int getIntExtra(String name, int otherwise) { return (int) extras.getOrDefault(name, otherwise); }
	public long getLongExtra(String name, long otherwise) { return (long) extras.getOrDefault(name, otherwise); }

	public static Intent createChooser(Intent target, CharSequence title) {
		Intent sheet = new Intent("android.intent.action.CHOOSER");
		sheet.inside = target;
		return sheet;
	}
}
