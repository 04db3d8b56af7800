package stage;

import java.util.List;
import java.util.concurrent.ConcurrentHashMap;

/** What the stand-ins of Android's classes are to do, and what was done to them. */
public class Stage {
	private static final ConcurrentHashMap<String, String> SET = new ConcurrentHashMap<>();

	public static void set(String key, String value) { SET.put(key, value); }
	public static String get(String key) { return SET.getOrDefault(key, ""); }
	public static boolean is(String key) { return get(key).equals("yes"); }
	public static void count(String key) { SET.merge(key, "1", (a, b) -> String.valueOf(Integer.parseInt(a) + 1)); }
	public static void clear() { SET.clear(); }

	/** An activity as the toolkit hands it over. */
	public static Object activity() { return new android.app.Activity(); }
	public static List<String> providers() { return is("no receiver") ? List.of("network") : List.of("network", "gps"); }
}
