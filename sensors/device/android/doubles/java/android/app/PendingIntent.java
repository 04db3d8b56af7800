package android.app;

import android.content.Context;
import android.content.Intent;

public final class PendingIntent {
	private static final int IMMUTABLE = 1 << 26, MUTABLE = 1 << 25;
	public final boolean mutable;
	public final String to;

	public Intent intent;

	private PendingIntent(boolean mutable, String to) { this.mutable = mutable; this.to = to; }

	public static PendingIntent getActivity(Context context, int code, Intent intent, int flags) { return made(intent, flags); }
	public static PendingIntent getService(Context context, int code, Intent intent, int flags) { return made(intent, flags); }

	private static PendingIntent made(Intent intent, int flags) {
		if ((flags & IMMUTABLE) == 0) throw new IllegalArgumentException("nobody is to fill this in");
		PendingIntent p = new PendingIntent(false, intent.to);
		p.intent = intent;
		return p;
	}

	/** From 31 on it has to be said whether the intent may be filled in, from 34 on one that may names its package. */
	public static PendingIntent getBroadcast(Context context, int code, Intent intent, int flags) {
		int api = android.os.Build.VERSION.SDK_INT;
		boolean said = (flags & (MUTABLE | IMMUTABLE)) != 0;
		if (api >= 31 && !said) throw new IllegalArgumentException("one of FLAG_IMMUTABLE or FLAG_MUTABLE has to be given");
		boolean mutable = api < 31 ? (flags & IMMUTABLE) == 0 : (flags & MUTABLE) != 0;
		if (api >= 34 && mutable && intent.to == null) throw new IllegalArgumentException("a mutable intent without a package");
		return new PendingIntent(mutable, intent.to);
	}
}
