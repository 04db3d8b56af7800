package android.graphics.drawable;

public class Icon {}
