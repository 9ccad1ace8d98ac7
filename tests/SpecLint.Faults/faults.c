/*
 * Loaded before the C library (LD_PRELOAD): counts the calls that touch files below one folder, and lets the nth of them fail.
 * Built by FaultTests with the C compiler of the system; it is part of no release.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <pthread.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <sys/uio.h>
#include <unistd.h>

enum mode { COUNT, ONCE, FROM_THEN_ON, SHORT_WRITE, DIE };

#define MOST_CALLS 100000
#define MOST_FILES 65536

static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
static char prefix[PATH_MAX];
static size_t prefix_length;
static int armed, mode, error_number, wants_failed_write;
static long nth, calls, hits;
static const char *kinds[MOST_CALLS];
static unsigned char watched[MOST_FILES];

/* Watches a folder. The nth call that touches it fails as the mode says; 0 only counts. */
void faults_arm(const char *folder, long which, int how, int error)
{
    pthread_mutex_lock(&lock);
    snprintf(prefix, sizeof prefix, "%s", folder);
    prefix_length = strlen(prefix);
    nth = which;
    mode = how;
    error_number = error;
    calls = hits = 0;
    wants_failed_write = 0;
    armed = 1;
    pthread_mutex_unlock(&lock);
}

/* Ends the watch; the number of calls that were seen. */
long faults_disarm(void)
{
    pthread_mutex_lock(&lock);
    armed = 0;
    pthread_mutex_unlock(&lock);
    return calls;
}

/* How often a call was made to fail since the watch began. */
long faults_hits(void) { return hits; }

/* The name of a call, from 1. */
const char *faults_kind(long which) { return which > 0 && which <= calls && which < MOST_CALLS ? kinds[which] : ""; }

__attribute__((constructor)) static void from_environment(void)
{
    const char *folder = getenv("FAULTS_FOLDER"), *at = getenv("FAULTS_DIE_AT");
    if (folder && at) faults_arm(folder, atol(at), DIE, 0);
}

static int is_below(const char *path) { return armed && path && prefix_length && strncmp(path, prefix, prefix_length) == 0; }

/* 0: let the call through. 1: it fails, and errno is set. 2: write a part. */
static int meet(const char *kind)
{
    int answer = 0;
    pthread_mutex_lock(&lock);
    if (armed) {
        calls++;
        if (calls < MOST_CALLS) kinds[calls] = kind;
        int writes = strcmp(kind, "write") == 0;
        if (mode == DIE && nth > 0 && calls == nth) _exit(137);
        if ((mode == ONCE && calls == nth) || (mode == FROM_THEN_ON && nth > 0 && calls >= nth)) answer = 1;
        if (mode == SHORT_WRITE && writes && wants_failed_write) { answer = 1; wants_failed_write = 0; }
        else if (mode == SHORT_WRITE && writes && calls == nth) { answer = 2; wants_failed_write = 1; }
        if (answer) hits++;
    }
    pthread_mutex_unlock(&lock);
    if (answer == 1) errno = error_number;
    return answer;
}

static int is_watched(int fd) { return armed && fd >= 0 && fd < MOST_FILES && watched[fd]; }

#define NEXT(name) static __typeof__(&name) next; if (!next) next = (__typeof__(&name))dlsym(RTLD_NEXT, #name)

static const char *kind_of_open(int flags) { return flags & O_CREAT ? "create" : (flags & O_ACCMODE) == O_RDONLY ? "open" : "open to write"; }

static int opened(int fd, const char *path)
{
    if (fd >= 0 && fd < MOST_FILES) watched[fd] = is_below(path);
    return fd;
}

#define OPEN(name) \
    int name(const char *path, int flags, ...) \
    { \
        NEXT(name); \
        va_list more; \
        va_start(more, flags); \
        mode_t rights = flags & O_CREAT ? va_arg(more, mode_t) : 0; \
        va_end(more); \
        if (is_below(path) && meet(kind_of_open(flags))) return -1; \
        return opened(next(path, flags, rights), path); \
    }
OPEN(open)
OPEN(open64)

#define OPENAT(name) \
    int name(int folder, const char *path, int flags, ...) \
    { \
        NEXT(name); \
        va_list more; \
        va_start(more, flags); \
        mode_t rights = flags & O_CREAT ? va_arg(more, mode_t) : 0; \
        va_end(more); \
        if (is_below(path) && meet(kind_of_open(flags))) return -1; \
        return opened(next(folder, path, flags, rights), path); \
    }
OPENAT(openat)
OPENAT(openat64)

DIR *opendir(const char *path)
{
    NEXT(opendir);
    if (is_below(path) && meet("list")) return NULL;
    return next(path);
}

#define WRITE(name, parameters, arguments, part) \
    ssize_t name parameters \
    { \
        NEXT(name); \
        if (is_watched(fd)) { \
            int answer = meet("write"); \
            if (answer == 1) return -1; \
            if (answer == 2 && count > 1) return next part; \
        } \
        return next arguments; \
    }
WRITE(write, (int fd, const void *bytes, size_t count), (fd, bytes, count), (fd, bytes, count / 2))
WRITE(pwrite, (int fd, const void *bytes, size_t count, off_t at), (fd, bytes, count, at), (fd, bytes, count / 2, at))
WRITE(pwrite64, (int fd, const void *bytes, size_t count, off64_t at), (fd, bytes, count, at), (fd, bytes, count / 2, at))

ssize_t read(int fd, void *bytes, size_t count)
{
    NEXT(read);
    return is_watched(fd) && meet("read") ? -1 : next(fd, bytes, count);
}

ssize_t pread(int fd, void *bytes, size_t count, off_t at)
{
    NEXT(pread);
    return is_watched(fd) && meet("read") ? -1 : next(fd, bytes, count, at);
}

ssize_t pread64(int fd, void *bytes, size_t count, off64_t at)
{
    NEXT(pread64);
    return is_watched(fd) && meet("read") ? -1 : next(fd, bytes, count, at);
}

#define OF_FILE(name, kind, parameters, arguments) \
    int name parameters \
    { \
        NEXT(name); \
        return is_watched(fd) && meet(kind) ? -1 : next arguments; \
    }
OF_FILE(fsync, "flush", (int fd), (fd))
OF_FILE(fdatasync, "flush", (int fd), (fd))
OF_FILE(fchmod, "rights", (int fd, mode_t rights), (fd, rights))
OF_FILE(ftruncate, "truncate", (int fd, off_t length), (fd, length))
OF_FILE(ftruncate64, "truncate", (int fd, off64_t length), (fd, length))
OF_FILE(flock, "lock", (int fd, int operation), (fd, operation))

/* A close that fails has closed the file all the same. */
int close(int fd)
{
    NEXT(close);
    int fails = is_watched(fd) && meet("close");
    if (fd >= 0 && fd < MOST_FILES) watched[fd] = 0;
    int result = next(fd);
    if (!fails) return result;
    errno = error_number;
    return -1;
}

#define OF_PATH(name, kind, parameters, arguments) \
    int name parameters \
    { \
        NEXT(name); \
        return is_below(path) && meet(kind) ? -1 : next arguments; \
    }
OF_PATH(rename, "rename", (const char *path, const char *to), (path, to))
OF_PATH(link, "link", (const char *path, const char *to), (path, to))

int renameat2(int folder, const char *path, int to_folder, const char *to, unsigned int flags)
{
    NEXT(renameat2);
    return is_below(path) && meet("rename") ? -1 : next(folder, path, to_folder, to, flags);
}

OF_PATH(unlink, "remove", (const char *path), (path))
OF_PATH(rmdir, "remove folder", (const char *path), (path))
OF_PATH(mkdir, "make folder", (const char *path, mode_t rights), (path, rights))
OF_PATH(chmod, "rights", (const char *path, mode_t rights), (path, rights))
