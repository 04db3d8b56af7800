package android.content;

import java.util.TreeMap;

public class ContentValues {
	final TreeMap<String, String> values = new TreeMap<>();
	public void put(String key, String value) { values.put(key, value); }
}
