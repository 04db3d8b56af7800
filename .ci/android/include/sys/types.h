/* Android's C library has the types of stdint.h from here on; this machine's
 * has not. */
#include_next <sys/types.h>
#include <stdint.h>
