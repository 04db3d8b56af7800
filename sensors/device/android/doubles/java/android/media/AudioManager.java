package android.media;

import stage.Stage;

public class AudioManager {
	/** null is what a phone answers that knows nothing of a property. */
	public String getProperty(String name) {
		if (!name.equals("android.media.property.SUPPORT_AUDIO_SOURCE_UNPROCESSED")) throw new IllegalArgumentException(name);
		String can = Stage.get("untreated");
		return can.isEmpty() ? null : can;
	}
}
