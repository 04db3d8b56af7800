package android.os;

public class Build {
	public static class VERSION {
		/** Not final, so that the compiler does not copy it. */
		public static int SDK_INT = 35;
	}
}
