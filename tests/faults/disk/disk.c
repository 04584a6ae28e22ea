// Stands between a program and its files (LD_PRELOAD): writes down what is written and what is synced, so that the states which a power
// cut could leave can be made of it. DISK_LOG names the log, DISK_PREFIX what the names of the files begin with that are of interest.
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <unistd.h>

enum { WRITE = 1, SYNC = 2, TRUNCATE = 3, REMOVE = 4 };

// One entry: this head, the file's name, and for WRITE the bytes.
struct head {
  uint32_t kind, name;
  uint64_t offset, length;
};

static int out = -1;
static const char *prefix;
static pthread_mutex_t turn = PTHREAD_MUTEX_INITIALIZER;
static ssize_t (*write_)(int, const void *, size_t);

static void *real(const char *name) { return dlsym(RTLD_NEXT, name); }

__attribute__((constructor)) static void begin(void) {
  const char *log = getenv("DISK_LOG");
  prefix = getenv("DISK_PREFIX");
  write_ = real("write");
  if (log && prefix) out = open(log, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
}

static int named(int fd, char *name) {
  char link[64];
  if (out < 0) return 0;
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, name, 4095);
  if (length <= 0) return 0;
  name[length] = 0;
  return strncmp(name, prefix, strlen(prefix)) == 0;
}

static void put(const void *bytes, size_t length) {
  const char *at = bytes;
  while (length > 0) {
    ssize_t done = write_(out, at, length);
    if (done <= 0) _exit(70);
    at += done;
    length -= done;
  }
}

static void note(int kind, const char *name, uint64_t offset, const void *bytes, uint64_t length) {
  struct head head = {kind, strlen(name), offset, length};
  put(&head, sizeof head);
  put(name, head.name);
  if (bytes) put(bytes, length);
}

// Entries stand in the log in the order in which the calls came to an end.
#define NOTED(call, fd, kind, offset, bytes, length)             \
  char name[4096];                                               \
  if (!named(fd, name)) return call;                             \
  pthread_mutex_lock(&turn);                                     \
  __typeof__(call) done = call;                                  \
  if (done >= 0) note(kind, name, offset, bytes, length);        \
  pthread_mutex_unlock(&turn);                                   \
  return done;

ssize_t pwrite64(int fd, const void *bytes, size_t length, off64_t offset) {
  static ssize_t (*call)(int, const void *, size_t, off64_t);
  if (!call) call = real("pwrite64");
  NOTED(call(fd, bytes, length, offset), fd, WRITE, offset, bytes, done)
}

ssize_t pwrite(int fd, const void *bytes, size_t length, off_t offset) { return pwrite64(fd, bytes, length, offset); }

// Where the engine was built to seek first.
ssize_t write(int fd, const void *bytes, size_t length) {
  char name[4096];
  if (!write_) write_ = real("write");
  if (!named(fd, name)) return write_(fd, bytes, length);
  pthread_mutex_lock(&turn);
  ssize_t done = write_(fd, bytes, length);
  if (done >= 0) note(WRITE, name, lseek64(fd, 0, SEEK_CUR) - done, bytes, done);
  pthread_mutex_unlock(&turn);
  return done;
}

int fsync(int fd) {
  static int (*call)(int);
  if (!call) call = real("fsync");
  NOTED(call(fd), fd, SYNC, 0, NULL, 0)
}

int fdatasync(int fd) {
  static int (*call)(int);
  if (!call) call = real("fdatasync");
  NOTED(call(fd), fd, SYNC, 0, NULL, 0)
}

int ftruncate64(int fd, off64_t length) {
  static int (*call)(int, off64_t);
  if (!call) call = real("ftruncate64");
  NOTED(call(fd, length), fd, TRUNCATE, length, NULL, 0)
}

int ftruncate(int fd, off_t length) { return ftruncate64(fd, length); }

int unlink(const char *path) {
  static int (*call)(const char *);
  if (!call) call = real("unlink");
  if (out < 0 || strncmp(path, prefix, strlen(prefix)) != 0) return call(path);
  pthread_mutex_lock(&turn);
  int done = call(path);
  if (done >= 0) note(REMOVE, path, 0, NULL, 0);
  pthread_mutex_unlock(&turn);
  return done;
}
