package org.golang.app;

/** Stands in for the toolkit's activity, of which the packed one is made. */
public class GoNativeActivity extends android.app.Activity {}
