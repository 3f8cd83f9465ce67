const reasons: Record<string, string> = {
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EROFS: 'the file system is read-only',
  ENOENT: 'there is no such file or folder',
  ENOTDIR: 'a file stands where a folder is needed',
  EISDIR: 'a folder stands where a file is needed',
  ENOTEMPTY: 'a folder stands where a file is needed',
  EEXIST: 'a file stands where a folder is needed',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EFBIG: 'the file would be too large for the file system',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'links lead in a circle',
  EMFILE: 'too many files are open at once; raise the limit (ulimit -n), or give batch fewer --jobs',
  ENFILE: 'too many files are open on this system',
  ENOMEM: 'memory is used up',
  EAGAIN: 'the system allows no more threads or processes',
  ENXIO: 'there is no such device, or nobody at its other end',
  ESTALE: 'it was removed from its disk',
  EBUSY: 'it is in use',
  EIO: 'the device failed',
};

/** What went wrong with a file, in plain words; undefined for anything that is no fault of the file system. */
export function plainReason(error: unknown): string | undefined {
  const code = (error as NodeJS.ErrnoException | null)?.code;
  if (!(error instanceof Error) || typeof code !== 'string' || !('syscall' in error)) return undefined;
  return reasons[code] ?? `the system says ${code}`;
}

/** What the machine has too little of, whatever was being done; undefined for any other error. */
export function scarcity(error: unknown): string | undefined {
  const code = (error as NodeJS.ErrnoException | null)?.code ?? '';
  if (
    code === 'ERR_WORKER_OUT_OF_MEMORY' ||
    (error instanceof RangeError && /^Array buffer allocation failed/.test(error.message))
  )
    return 'out of memory; a coarser tolerance or fewer --jobs take less';
  if (code === 'ERR_WORKER_INIT_FAILED') return reasons.EAGAIN;
  return ['EMFILE', 'ENFILE', 'ENOMEM', 'ENOSPC', 'EDQUOT', 'EIO'].includes(code)
    ? plainReason(error)
    : undefined;
}
