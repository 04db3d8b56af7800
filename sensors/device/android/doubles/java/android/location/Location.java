package android.location;

public class Location {
	final long nanos, utc;
	final int n;
	final boolean bare;

	Location(long nanos, int n, boolean bare) {
		this.nanos = nanos;
		this.n = n;
		this.bare = bare;
		utc = 1780000000000L + 1000L * n;
	}

	public long getElapsedRealtimeNanos() { return nanos; }
	public long getTime() { return utc; }
	public double getLatitude() { return 48 + n * 1e-5; }
	public double getLongitude() { return 11; }
	public boolean hasAltitude() { return !bare; }
	public double getAltitude() { return 500; }
	public boolean hasSpeed() { return true; }
	public float getSpeed() { return 20; }
	public boolean hasBearing() { return !bare; }
	public float getBearing() { return 90; }
	public boolean hasAccuracy() { return !bare; }
	public float getAccuracy() { return 3; }
	public boolean hasSpeedAccuracy() { return !bare; }
	public float getSpeedAccuracyMetersPerSecond() { return 0.3f; }
}
