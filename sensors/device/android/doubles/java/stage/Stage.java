package stage;

import java.util.List;
import java.util.concurrent.ConcurrentHashMap;

/** What the stand-ins of Android's classes are to do, and what was done to them. */
public class Stage {
	private static final ConcurrentHashMap<String, String> SET = new ConcurrentHashMap<>();

	public static void set(String key, String value) { SET.put(key, value); }
	public static String get(String key) { return SET.getOrDefault(key, ""); }
	public static boolean is(String key) { return get(key).equals("yes"); }
	public static int number(String key) { return get(key).isEmpty() ? 0 : Integer.parseInt(get(key)); }
	public static void count(String key) { SET.merge(key, "1", (a, b) -> String.valueOf(Integer.parseInt(a) + 1)); }
	public static void clear() { SET.clear(); }

	/** The packed activity, as the toolkit hands it over. */
	public static Object activity() { return make("stillair.phone.RideActivity"); }

	/** An object of a class that is packed and not among the stand-ins. */
	public static Object make(String name) {
		try {
			return Class.forName(name).getDeclaredConstructor().newInstance();
		} catch (ReflectiveOperationException e) {
			throw new IllegalStateException(e);
		}
	}

	/** What the system or the rider does to the service. */
	public static void does(String what) {
		switch (what) {
		case "touch end": Services.touchEnd(); break;
		case "swipe": Services.swipe(); break;
		case "start with nothing": Services.startWithNothing(); break;
		case "kill": Services.kill(); break;
		case "settle": Services.settle(); break;
		case "clear": Services.clear(); break;
		default: throw new IllegalArgumentException(what);
		}
	}

	public static List<String> providers() { return is("no receiver") ? List.of("network") : List.of("network", "gps"); }
}
