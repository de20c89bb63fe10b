// WebAssembly of this compiler cannot unwind. What throws ends the program, loudly: a test that met
// it failed.
#include <cstdio>
#include <cstdlib>

extern "C" {

void* __cxa_allocate_exception(size_t) noexcept {
  std::fputs("An exception was thrown, and this build cannot unwind.\n", stderr);
  std::abort();
}

// The one thread ends with the program, and nothing asks for what it kept.
int __cxa_thread_atexit(void (*)(void*), void*, void*) noexcept { return 0; }

[[noreturn]] void __cxa_throw(void*, void*, void (*)(void*)) { std::abort(); }

}  // extern "C"
