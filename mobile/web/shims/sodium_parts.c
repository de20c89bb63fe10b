// The two helpers that libsodium's SHA-256 calls, without the rest of the file they stand in, which asks for
// memory that is locked and guarded.
#include <stdlib.h>
#include <string.h>

#include "sodium/core.h"
#include "sodium/utils.h"

void sodium_memzero(void* const bytes, const size_t size) { memset(bytes, 0, size); }

void sodium_misuse(void) { abort(); }
