#pragma once

// What SQLite's layer for Unix uses of POSIX and WASI lacks. Included before sqlite3.c by the compiler.
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

int fchmod(int descriptor, mode_t mode);
int fchown(int descriptor, uid_t owner, gid_t group);
uid_t geteuid(void);
int getpagesize(void);

#ifndef F_RDLCK
#define F_RDLCK 0
#endif
#ifndef F_WRLCK
#define F_WRLCK 1
#endif
#ifndef F_UNLCK
#define F_UNLCK 2
#endif
#ifndef F_GETLK
#define F_GETLK 5
#define F_SETLK 6
#define F_SETLKW 7
#endif
