import { DwellwrightError } from '../../core/DwellwrightError.ts';
import { fileRefusals } from '../../core/text/file-refusals.ts';

export type FileErrorCode =
  | 'file-missing'
  | 'file-is-folder'
  | 'file-not-allowed'
  | 'file-not-written'
  | 'file-unreadable'
  | 'file-empty'
  | 'file-too-large';

/** A file that cannot be read or written; the system's own error, where there is one, is the cause. */
export class FileError extends DwellwrightError {
  override readonly name = 'FileError';
  override readonly code: FileErrorCode;
  readonly path: string;

  constructor(
    code: FileErrorCode,
    path: string,
    refusal: readonly [message: string, remedy: string],
    cause?: unknown,
  ) {
    super(code, refusal[0], { remedy: refusal[1], ...(cause === undefined ? {} : { cause }) });
    this.code = code;
    this.path = path;
  }
}

/** The system's failure to read a file as a FileError; anything that is no system error comes back as it was. */
export function readingError(error: unknown, path: string): unknown {
  const code = systemCode(error);
  if (code === null) return error;
  if (code === 'ENOENT' || code === 'ENOTDIR') {
    return new FileError('file-missing', path, fileRefusals.missing(path), error);
  }
  if (code === 'EISDIR') return new FileError('file-is-folder', path, fileRefusals.folder(path), error);
  if (code === 'EACCES' || code === 'EPERM') {
    return new FileError('file-not-allowed', path, fileRefusals.notAllowed(path, code), error);
  }
  return new FileError('file-unreadable', path, fileRefusals.unreadable(path, code), error);
}

/** The system's failure to write a file as a FileError; anything that is no system error comes back as it was. */
export function writingError(error: unknown, path: string): unknown {
  const code = systemCode(error);
  if (code === null) return error;
  return new FileError('file-not-written', path, fileRefusals.notWritten(path, code), error);
}

function systemCode(error: unknown): string | null {
  return error instanceof Error && 'syscall' in error && 'code' in error ? String(error.code) : null;
}
