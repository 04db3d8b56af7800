package android.content;

public class Intent {
	public String to;

	public Intent(String action) { if (action == null) throw new NullPointerException("action"); }
	public Intent setPackage(String name) { to = name; return this; }
}
