package android.speech.tts;

import android.content.Context;
import android.os.Bundle;
import java.util.Locale;
import stage.Stage;

public class TextToSpeech {
	public interface OnInitListener { void onInit(int status); }

	private Locale locale;

	public TextToSpeech(Context context, OnInitListener listener) { Stage.count("voices"); }
	public int setLanguage(Locale l) { locale = l; return 0; }

	public int speak(CharSequence text, int mode, Bundle more, String name) {
		if (Stage.is("hoarse")) return -1;
		Stage.set("said", locale.toLanguageTag() + ": " + text);
		return 0;
	}
}
