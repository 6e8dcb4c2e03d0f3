const WORDS: Readonly<Record<string, string>> = {
  ENOENT: 'nothing of that name',
  ENOTDIR: 'a path that goes through a file',
  EISDIR: 'a folder',
  EACCES: 'no permission',
  EPERM: 'no permission',
  EROFS: 'a read-only file system',
  ENOSPC: 'no space left on the disk',
  EDQUOT: 'no space left in the quota',
  EFBIG: 'a file larger than the disk allows',
  ENAMETOOLONG: 'a name that is too long',
  ELOOP: 'a circle of symbolic links',
  EIO: 'a disk that reported an error',
  EMFILE: 'too many open files',
  ENFILE: 'too many open files',
  EBUSY: 'a folder that is in use',
  ENOTEMPTY: 'a folder that is not empty',
  EEXIST: 'something of that name already',
  EXDEV: 'a folder on another disk',
  EINVAL: 'a name the system refuses',
};

/** What a file system call met instead of success, in words; undefined for anything but such a failure. */
export function troubleWords(error: unknown): string | undefined {
  const code = errorCode(error);
  return code === undefined ? undefined : WORDS[code] ?? `the system's error ${code}`;
}

export function errorCode(error: unknown): string | undefined {
  const code: unknown = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ERR_INVALID_ARG_VALUE') return 'EINVAL';
  return typeof code === 'string' && /^E[A-Z0-9]+$/.test(code) ? code : undefined;
}
