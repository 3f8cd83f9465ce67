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
  EMFILE: 'too few files may be open at once; raise the limit (ulimit -n 1024)',
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
  // The system's own word on it stands in the message.
  if (code === 'ERR_WORKER_INIT_FAILED')
    return reasons[/\bE[A-Z]+$/.exec(String((error as Error).message))?.[0] ?? ''] ?? reasons.EAGAIN;
  if (['EMFILE', 'ENFILE', 'ENOMEM', 'ENOSPC', 'EDQUOT', 'EIO'].includes(code)) return reasons[code];
  return outOfMemory(error);
}

/** That memory did not do, of a worker or for one array; undefined for any other error. */
export function outOfMemory(error: unknown): string | undefined {
  if (!(error instanceof Error)) return undefined;
  const { code } = error as NodeJS.ErrnoException;
  const out =
    code === 'ERR_WORKER_OUT_OF_MEMORY' ||
    /^(Array buffer allocation failed|Invalid array buffer length)/.test(error.message);
  return out ? 'memory ran out; a coarser tolerance takes less, and so do fewer --jobs' : undefined;
}
