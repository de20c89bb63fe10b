// The calls of POSIX that core and SQLite make and WASI does not have, and how SQLite locks here.
//
// One program alone has the files of this build: in a browser a file that one tab holds cannot be opened by
// another (files/opfs_files.mjs), so that a lock among programs is given at once. Among the connections of
// this one program SQLite keeps order itself.
#include <fcntl.h>
#include <sqlite3.h>
#include <stdarg.h>
#include <stdlib.h>
#include <sys/types.h>

#include "sqlite_gaps.h"

int fchmod(int descriptor, mode_t mode) {
  (void)descriptor;
  (void)mode;
  return 0;
}

int fchown(int descriptor, uid_t owner, gid_t group) {
  (void)descriptor;
  (void)owner;
  (void)group;
  return 0;
}

uid_t geteuid(void) { return 1; }
pid_t getpid(void) { return 1; }
int getpagesize(void) { return 4096; }

int flock(int descriptor, int operation) {
  (void)descriptor;
  (void)operation;
  return 0;
}

// SQLite maps nothing but the index of a write-ahead log, each part of it once a program, and makes the index
// anew when nobody else has it: memory of its own serves it as well.
void* mmap(void* at, size_t length, int protection, int flags, int descriptor, off_t offset) {
  (void)at;
  (void)protection;
  (void)flags;
  (void)descriptor;
  (void)offset;
  void* memory = calloc(1, length);
  return memory == NULL ? (void*)-1 : memory;
}

int munmap(void* at, size_t length) {
  (void)length;
  free(at);
  return 0;
}

static int fcntl_of_one_program(int descriptor, int command, ...) {
  va_list rest;
  va_start(rest, command);
  int result = 0;
  if (command == F_GETLK) {
    va_arg(rest, struct flock*)->l_type = F_UNLCK;
  } else if (command != F_SETLK) {
    result = fcntl(descriptor, command, va_arg(rest, int));
  }
  va_end(rest);
  return result;
}

// SQLite calls it once, before its first connection (SQLITE_EXTRA_INIT).
int oaklight_prepare_sqlite(const char* unused) {
  (void)unused;
  sqlite3_vfs* vfs = sqlite3_vfs_find(NULL);
  return vfs->xSetSystemCall(vfs, "fcntl", (sqlite3_syscall_ptr)fcntl_of_one_program);
}
