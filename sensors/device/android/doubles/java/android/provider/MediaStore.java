package android.provider;

import android.net.Uri;

public class MediaStore {
	public static class Downloads {
		public static final Uri EXTERNAL_CONTENT_URI = new Uri("content://media/external/downloads");
	}
}
