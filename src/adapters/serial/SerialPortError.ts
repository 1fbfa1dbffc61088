import { constants } from 'node:fs';
import { access, stat } from 'node:fs/promises';
import { DwellwrightError } from '../../core/DwellwrightError.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { type PortTrouble, portTroubleText } from '../../core/text/port-trouble.ts';

/** A serial port that cannot be opened; `trouble` says why. */
export class SerialPortError extends DwellwrightError {
  override readonly name = 'SerialPortError';
  readonly trouble: PortTrouble;
  readonly path: string;

  constructor(trouble: PortTrouble, path: string, cause: unknown) {
    const reason = neutralise(cause instanceof Error ? cause.message : String(cause));
    const { message, remedy } = portTroubleText(trouble, neutralise(path), reason, process.platform);
    super(`port-${trouble}`, message, { remedy, cause });
    this.trouble = trouble;
    this.path = path;
  }
}

/**
 * Finds out why a port did not open. The serial library gives the system's reason as a sentence only, so the
 * file system is asked first (Linux, macOS), and the sentence only where that says nothing.
 */
export async function toSerialPortError(path: string, cause: unknown): Promise<SerialPortError> {
  return new SerialPortError(await troubleOf(path, cause instanceof Error ? cause.message : ''), path, cause);
}

async function troubleOf(path: string, message: string): Promise<PortTrouble> {
  if (process.platform !== 'win32') {
    try {
      if (!(await stat(path)).isCharacterDevice()) return 'not-a-port';
      await access(path, constants.R_OK | constants.W_OK);
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code;
      if (code === 'EACCES' || code === 'EPERM') return 'not-permitted';
      if (code === 'ENOENT' || code === 'ENOTDIR') return 'no-such-port';
    }
  }
  if (/file not found|no such (file|device)|ENOENT/i.test(message)) return 'no-such-port';
  // Windows answers "access denied" for a port that another program holds.
  if (/lock|busy|access denied|temporarily unavailable/i.test(message)) return 'busy';
  if (/permission|not permitted/i.test(message)) return 'not-permitted';
  if (/baud/i.test(message)) return 'bad-baud';
  if (/inappropriate ioctl|not a (tty|typewriter)/i.test(message)) return 'not-a-port';
  return 'unknown';
}
