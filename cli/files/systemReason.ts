/** Whether an error is the operating system's answer. */
export function isSystemError(error: unknown): error is NodeJS.ErrnoException {
  return error instanceof Error && 'code' in error;
}

/** What the operating system's answer means, for a person. */
export function systemReason(error: unknown): string {
  const code = isSystemError(error) ? error.code : undefined;
  switch (code) {
    case 'EACCES':
    case 'EPERM':
      return 'permission is denied';
    case 'ENOSPC':
      return 'the disk is full';
    case 'EDQUOT':
      return 'the space that you may use on the disk is full';
    case 'EROFS':
      return 'the disk can only be read';
    case 'EIO':
      return 'the disk or its connection has a fault';
    case 'EBUSY':
    case 'ETXTBSY':
      return 'another program holds it';
    case 'EMFILE':
    case 'ENFILE':
      return 'too many files are open';
    case 'ENOTDIR':
      return 'a file stands where a folder is needed';
    case 'EISDIR':
      return 'it is a folder';
    case 'ENOENT':
      return 'it does not exist';
    case 'ELOOP':
      return 'its links lead in a circle';
    case 'ENAMETOOLONG':
      return 'its name is too long';
    case 'EFBIG':
      return 'it is larger than files may be here';
    default:
      return code === undefined ? String(error) : `the system answered ${code}`;
  }
}
