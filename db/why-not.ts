const reasons: Readonly<Record<string, string>> = {
  EACCES: 'this user may not read and write there',
  EPERM: 'this user may not read and write there',
  EROFS: 'it lies on a disk that is read-only',
  ENOTDIR: 'a part of its path is a file, not a folder',
  EEXIST: 'something that is not a folder has its name',
  ENOENT: 'a link in its path leads nowhere',
  ELOOP: 'its path leads in a circle',
  ENOSPC: 'the disk is full',
  EDQUOT: 'this user’s share of the disk is full',
  ENAMETOOLONG: 'its name is too long',
  EIO: 'the disk does not answer as it should',
}

/**
 * Why the system refused a file or folder, in words for the end of a sentence.
 *
 * @example
 * whyNot(Object.assign(new Error('mkdir'), { code: 'ENOSPC' })) // 'the disk is full'
 */
export function whyNot(error: unknown): string {
  return reasons[(error as NodeJS.ErrnoException).code ?? ''] ?? 'the system refuses it'
}
