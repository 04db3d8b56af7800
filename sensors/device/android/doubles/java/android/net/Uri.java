package android.net;

public class Uri implements android.os.Parcelable {
	public final String text;
	public Uri(String text) { this.text = text; }
}
