//go:build android || doubles

package android

// #include "place.h"
import "C"

import "stillair/sensors/finding"

// FilesFolder is the folder that belongs to the app alone.
func FilesFolder(native Native) (path string, err error) {
	err = native(func(_, env, ctx uintptr) error {
		var out [1024]C.char
		ok := C.still_files_folder((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), &out[0], C.int(len(out)))
		if ok == 0 {
			return finding.Fail("android.no_folder", finding.Text("why", C.GoString(&out[0])))
		}
		path = C.GoString(&out[0])
		return nil
	})
	return path, err
}
