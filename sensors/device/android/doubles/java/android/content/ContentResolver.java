package android.content;

import android.net.Uri;
import java.io.ByteArrayOutputStream;
import java.io.FileNotFoundException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import stage.Stage;

public class ContentResolver {
	public Uri insert(Uri into, ContentValues values) {
		if (Stage.is("no room")) return null;
		return new Uri(into.text + "/" + values.values.get("_display_name") + "?" + values.values.get("mime_type"));
	}

	public OutputStream openOutputStream(Uri uri) throws FileNotFoundException {
		if (uri == null) throw new NullPointerException("uri");
		return new ByteArrayOutputStream() {
			@Override public void close() { Stage.set(uri.text, toString(StandardCharsets.UTF_8)); }
		};
	}
}
