//go:build doubles

package doubles

// #define _GNU_SOURCE
// #include <dlfcn.h>
// #include <jni.h>
// #include <stdlib.h>
// #include "stage.h"
//
// static int create(JavaVM **vm, char *classes) {
//	JNIEnv *env;
//	JavaVMOption options[] = {{classes, NULL}, {"-Xcheck:jni", NULL}, {"-Xrs", NULL}};
//	JavaVMInitArgs args = {JNI_VERSION_1_6, 3, options, JNI_FALSE};
//	int failed = JNI_CreateJavaVM(vm, (void **)&env, &args);
//	if (!failed) (*(*vm))->DetachCurrentThread(*vm);
//	return failed;
// }
// static JNIEnv *attach(JavaVM *vm) {
//	JNIEnv *env = NULL;
//	(*vm)->AttachCurrentThread(vm, (void **)&env, NULL);
//	return env;
// }
// static void detach(JavaVM *vm) { (*vm)->DetachCurrentThread(vm); }
// static jobject stage(JNIEnv *env, char *method, char *signature, char *a, char *b) {
//	jclass type = (*env)->FindClass(env, "stage/Stage");
//	if ((*env)->ExceptionCheck(env)) { (*env)->ExceptionDescribe(env); return NULL; }
//	jmethodID id = (*env)->GetStaticMethodID(env, type, method, signature);
//	if ((*env)->ExceptionCheck(env)) { (*env)->ExceptionDescribe(env); return NULL; }
//	jvalue args[2] = {{0}};
//	if (a) args[0].l = (*env)->NewStringUTF(env, a);
//	if ((*env)->ExceptionCheck(env)) return NULL;
//	if (b) args[1].l = (*env)->NewStringUTF(env, b);
//	if ((*env)->ExceptionCheck(env)) return NULL;
//	jobject result = NULL;
//	size_t n = 0;
//	while (signature[n]) n++;
//	if (signature[n - 1] == 'V') (*env)->CallStaticVoidMethodA(env, type, id, args);
//	else result = (*env)->CallStaticObjectMethodA(env, type, id, args);
//	if ((*env)->ExceptionCheck(env)) { (*env)->ExceptionDescribe(env); return NULL; }
//	return result;
// }
// // bind gives the packed service its native method, which a phone finds in the
// // library that the activity loads.
// static int bind(JNIEnv *env) {
//	JNINativeMethod told = {"told", "(JILjava/lang/String;)V", dlsym(RTLD_DEFAULT, "Java_stillair_phone_RideService_told")};
//	if (!told.fnPtr) return 0;
//	jclass type = (*env)->FindClass(env, "stillair/phone/RideService");
//	if ((*env)->ExceptionCheck(env)) { (*env)->ExceptionDescribe(env); return 0; }
//	return (*env)->RegisterNatives(env, type, &told, 1) == 0;
// }
// static void number(JNIEnv *env, int api) {
//	jclass type = (*env)->FindClass(env, "android/os/Build$VERSION");
//	if ((*env)->ExceptionCheck(env)) return;
//	jfieldID id = (*env)->GetStaticFieldID(env, type, "SDK_INT", "I");
//	if ((*env)->ExceptionCheck(env)) return;
//	(*env)->SetStaticIntField(env, type, id, api);
// }
// static char *text(JNIEnv *env, jobject s) {
//	const char *c = (*env)->GetStringUTFChars(env, s, NULL);
//	char *copy = malloc(400);
//	int i = 0;
//	for (; c && c[i] && i < 399; i++) copy[i] = c[i];
//	copy[i] = 0;
//	(*env)->ReleaseStringUTFChars(env, s, c);
//	return copy;
// }
import "C"

import (
	"errors"
	"fmt"
	"runtime"
	"time"
	"unsafe"
)

// Machine is a Java virtual machine in which stand-ins take the place of
// Android's classes. A process can have one.
type Machine struct{ vm *C.JavaVM }

// Start makes the machine; classes is the folder of the compiled stand-ins.
func Start(classes string) (*Machine, error) {
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	path := C.CString("-Djava.class.path=" + classes)
	var vm *C.JavaVM
	if code := C.create(&vm, path); code != 0 {
		return nil, fmt.Errorf("doubles: JVM error %d", code)
	}
	m := &Machine{vm}
	bound := false
	m.attached(func(env *C.JNIEnv) { bound = C.bind(env) != 0 })
	if !bound {
		return nil, errors.New("doubles: RideService.told missing")
	}
	return m, nil
}

func (m *Machine) attached(do func(env *C.JNIEnv)) {
	done := make(chan struct{})
	go func() {
		defer close(done)
		runtime.LockOSThread()
		defer runtime.UnlockOSThread()
		do(C.attach(m.vm))
		C.detach(m.vm)
	}()
	<-done
}

// Native runs fn as the toolkit does: on a thread attached for this call, with
// an activity.
func (m *Machine) Native(fn func(vm, env, ctx uintptr) error) (err error) {
	m.attached(func(env *C.JNIEnv) {
		ctx := call(env, "activity", "()Ljava/lang/Object;")
		err = fn(uintptr(unsafe.Pointer(m.vm)), uintptr(unsafe.Pointer(env)), uintptr(ctx))
	})
	return err
}

func call(env *C.JNIEnv, method, signature string, args ...string) C.jobject {
	var c [2]*C.char
	for i, a := range args {
		c[i] = C.CString(a)
		defer C.free(unsafe.Pointer(c[i]))
	}
	name, sig := C.CString(method), C.CString(signature)
	defer C.free(unsafe.Pointer(name))
	defer C.free(unsafe.Pointer(sig))
	return C.stage(env, name, sig, c[0], c[1])
}

// Reset sets up a phone with the given version of Android, with every sensor,
// that has not slept.
func (m *Machine) Reset(api int) {
	m.attached(func(env *C.JNIEnv) {
		call(env, "does", "(Ljava/lang/String;)V", "clear")
		call(env, "clear", "()V")
		C.number(env, C.int(api))
	})
	Sensors(Phone{Shortest: 5000 * time.Microsecond})
	C.stage_quiet(0)
	SetMicrophone(Microphone{})
}

// Set sets a property of the Java stand-ins.
func (m *Machine) Set(key, value string) {
	m.attached(func(env *C.JNIEnv) { call(env, "set", "(Ljava/lang/String;Ljava/lang/String;)V", key, value) })
}

// Get returns a property of the Java stand-ins.
func (m *Machine) Get(key string) (value string) {
	m.attached(func(env *C.JNIEnv) {
		c := C.text(env, call(env, "get", "(Ljava/lang/String;)Ljava/lang/String;", key))
		value = C.GoString(c)
		C.free(unsafe.Pointer(c))
	})
	return value
}

// Does simulates an action of the system or the rider on the service.
func (m *Machine) Does(what string) {
	m.attached(func(env *C.JNIEnv) { call(env, "does", "(Ljava/lang/String;)V", what) })
}

// Phone is how the stand-in for the sensor queue behaves.
type Phone struct {
	Absent    int // sum of the numbers in motion.h of missing sensors
	Slept     time.Duration
	Monotonic bool          // sensors stamp on the clock that stops during sleep
	Shortest  time.Duration // period below which the system refuses
}

// Sensors sets the phone; call it before a port is started.
func Sensors(p Phone) {
	var monotonic C.int
	if p.Monotonic {
		monotonic = 1
	}
	C.stage_sensors(C.int(p.Absent), C.int64_t(p.Slept), monotonic, C.int32_t(p.Shortest.Microseconds()))
}

// Quiet makes all sensors fall silent.
func Quiet() { C.stage_quiet(1) }

// Open is the number of sensors that are switched on.
func Open() int { return int(C.stage_open()) }

// Microphone is how the stand-in for the microphone behaves.
type Microphone struct {
	Denied    bool          // it is not opened
	Picky     bool          // it is not opened untreated
	Unstamped bool          // it never provides time stamps
	Cut       time.Duration // after which it is disconnected, if not 0
}

// SetMicrophone sets how the microphone behaves; call it before one is started.
func SetMicrophone(m Microphone) {
	number := map[bool]C.int{true: 1}
	C.stage_microphone(number[m.Denied], number[m.Picky], number[m.Unstamped], C.int64_t(m.Cut))
}

// Listening is the number of open microphones.
func Listening() int { return int(C.stage_listening()) }

// Preset is the input preset requested for the last microphone, by AAudio's number.
func Preset() int { return int(C.stage_preset()) }
