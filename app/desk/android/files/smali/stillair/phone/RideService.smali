# Keeps the app's process alive and the processor awake while a ride is
# recorded, with the screen off or the app hidden. All it decides is in the
# program: the notification, the types and a number that means the program's
# side (ride) come with the intent that starts it, and what happens to it goes
# back through told.
.class public final Lstillair/phone/RideService;
.super Landroid/app/Service;
.source "RideService.smali"

# What told says; service.go has the same numbers.
.field static final STARTED:I = 0x1
.field static final REFUSED:I = 0x2
.field static final END:I = 0x3
.field static final SWIPED:I = 0x4
.field static final GONE:I = 0x5

.field private lock:Landroid/os/PowerManager$WakeLock;
.field private ride:J

.method public constructor <init>()V
    .registers 1
    invoke-direct {p0}, Landroid/app/Service;-><init>()V
    return-void
.end method

.method static native told(JILjava/lang/String;)V
.end method

# tell tells the program, if it is there: a process that the system started
# anew for this service alone has not loaded it.
.method private tell(ILjava/lang/String;)V
    .registers 5
    iget-wide v0, p0, Lstillair/phone/RideService;->ride:J
    :try
    invoke-static {v0, v1, p1, p2}, Lstillair/phone/RideService;->told(JILjava/lang/String;)V
    :tried
    .catch Ljava/lang/UnsatisfiedLinkError; {:try .. :tried} :absent
    return-void
    :absent
    move-exception v0
    return-void
.end method

.method public onBind(Landroid/content/Intent;)Landroid/os/IBinder;
    .registers 3
    const/4 v0, 0x0
    return-object v0
.end method

# Returns START_NOT_STICKY (2) always: a process started anew has no recording
# to go on with.
.method public onStartCommand(Landroid/content/Intent;II)I
    .registers 9
    if-eqz p1, :nothing
    const-string v0, "stillair.END"
    invoke-virtual {p1}, Landroid/content/Intent;->getAction()Ljava/lang/String;
    move-result-object v1
    invoke-virtual {v0, v1}, Ljava/lang/String;->equals(Ljava/lang/Object;)Z
    move-result v0
    if-eqz v0, :start
    iget-wide v0, p0, Lstillair/phone/RideService;->ride:J
    const-wide/16 v2, 0x0
    cmp-long v0, v0, v2
    if-eqz v0, :nothing
    const/4 v0, 0x3
    const/4 v1, 0x0
    invoke-direct {p0, v0, v1}, Lstillair/phone/RideService;->tell(ILjava/lang/String;)V
    goto :done

    :start
    const-string v0, "notification"
    invoke-virtual {p1, v0}, Landroid/content/Intent;->getParcelableExtra(Ljava/lang/String;)Landroid/os/Parcelable;
    move-result-object v0
    check-cast v0, Landroid/app/Notification;
    if-eqz v0, :nothing
    const-string v1, "ride"
    const-wide/16 v2, 0x0
    invoke-virtual {p1, v1, v2, v3}, Landroid/content/Intent;->getLongExtra(Ljava/lang/String;J)J
    move-result-wide v1
    iput-wide v1, p0, Lstillair/phone/RideService;->ride:J
    const-string v1, "types"
    const/16 v2, 0x8
    invoke-virtual {p1, v1, v2}, Landroid/content/Intent;->getIntExtra(Ljava/lang/String;I)I
    move-result v1
    :try
    invoke-direct {p0, v0, v1}, Lstillair/phone/RideService;->show(Landroid/app/Notification;I)V
    invoke-direct {p0}, Lstillair/phone/RideService;->hold()V
    :tried
    .catch Ljava/lang/RuntimeException; {:try .. :tried} :refused
    const/4 v0, 0x1
    const/4 v1, 0x0
    invoke-direct {p0, v0, v1}, Lstillair/phone/RideService;->tell(ILjava/lang/String;)V
    goto :done

    :refused
    move-exception v0
    invoke-virtual {v0}, Ljava/lang/RuntimeException;->toString()Ljava/lang/String;
    move-result-object v0
    const/4 v1, 0x2
    invoke-direct {p0, v1, v0}, Lstillair/phone/RideService;->tell(ILjava/lang/String;)V

    :nothing
    iget-object v0, p0, Lstillair/phone/RideService;->lock:Landroid/os/PowerManager$WakeLock;
    if-nez v0, :done
    invoke-virtual {p0}, Lstillair/phone/RideService;->stopSelf()V

    :done
    const/4 v0, 0x2
    return v0
.end method

# show puts the service into the foreground. Before Android 10 (29) a service
# had no types.
.method private show(Landroid/app/Notification;I)V
    .registers 6
    const/4 v0, 0x1
    sget v1, Landroid/os/Build$VERSION;->SDK_INT:I
    const/16 v2, 0x1d
    if-lt v1, v2, :old
    invoke-virtual {p0, v0, p1, p2}, Lstillair/phone/RideService;->startForeground(ILandroid/app/Notification;I)V
    return-void
    :old
    invoke-virtual {p0, v0, p1}, Lstillair/phone/RideService;->startForeground(ILandroid/app/Notification;)V
    return-void
.end method

# hold keeps the processor awake, once, until onDestroy.
.method private hold()V
    .registers 4
    iget-object v0, p0, Lstillair/phone/RideService;->lock:Landroid/os/PowerManager$WakeLock;
    if-nez v0, :held
    const-string v0, "power"
    invoke-virtual {p0, v0}, Lstillair/phone/RideService;->getSystemService(Ljava/lang/String;)Ljava/lang/Object;
    move-result-object v0
    check-cast v0, Landroid/os/PowerManager;
    const/4 v1, 0x1
    const-string v2, "stillair:ride"
    invoke-virtual {v0, v1, v2}, Landroid/os/PowerManager;->newWakeLock(ILjava/lang/String;)Landroid/os/PowerManager$WakeLock;
    move-result-object v0
    invoke-virtual {v0}, Landroid/os/PowerManager$WakeLock;->acquire()V
    iput-object v0, p0, Lstillair/phone/RideService;->lock:Landroid/os/PowerManager$WakeLock;
    :held
    return-void
.end method

.method public onTaskRemoved(Landroid/content/Intent;)V
    .registers 4
    const/4 v0, 0x4
    const/4 v1, 0x0
    invoke-direct {p0, v0, v1}, Lstillair/phone/RideService;->tell(ILjava/lang/String;)V
    return-void
.end method

.method public onDestroy()V
    .registers 3
    iget-object v0, p0, Lstillair/phone/RideService;->lock:Landroid/os/PowerManager$WakeLock;
    if-eqz v0, :free
    invoke-virtual {v0}, Landroid/os/PowerManager$WakeLock;->release()V
    const/4 v0, 0x0
    iput-object v0, p0, Lstillair/phone/RideService;->lock:Landroid/os/PowerManager$WakeLock;
    :free
    const/4 v0, 0x5
    const/4 v1, 0x0
    invoke-direct {p0, v0, v1}, Lstillair/phone/RideService;->tell(ILjava/lang/String;)V
    invoke-super {p0}, Landroid/app/Service;->onDestroy()V
    return-void
.end method
