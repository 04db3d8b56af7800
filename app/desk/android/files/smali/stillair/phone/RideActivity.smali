# The toolkit's activity, which also counts the rider's answers to questions for
# leave: Android gives them to a method of the activity and to nobody else. The
# program reads the count (leave.c), so that it needs no window focus to know
# that a question was answered.
.class public Lstillair/phone/RideActivity;
.super Lorg/golang/app/GoNativeActivity;
.source "RideActivity.smali"

.field public static volatile answers:I

.method public constructor <init>()V
    .registers 1
    invoke-direct {p0}, Lorg/golang/app/GoNativeActivity;-><init>()V
    return-void
.end method

# A question that was never put, since another was open, comes back empty and
# does not count.
.method public onRequestPermissionsResult(I[Ljava/lang/String;[I)V
    .registers 5
    invoke-super {p0, p1, p2, p3}, Lorg/golang/app/GoNativeActivity;->onRequestPermissionsResult(I[Ljava/lang/String;[I)V
    array-length v0, p3
    if-eqz v0, :unasked
    sget v0, Lstillair/phone/RideActivity;->answers:I
    add-int/lit8 v0, v0, 0x1
    sput v0, Lstillair/phone/RideActivity;->answers:I
    :unasked
    return-void
.end method
