import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openPort } from '../../../src/adapters/serial/open-port.ts';
import { SerialPortError, toSerialPortError } from '../../../src/adapters/serial/SerialPortError.ts';
import { NO_PTY, ptyReader } from './pty-reader.ts';

const deaf = { bytes: () => undefined, gone: () => undefined };
const refusal = (path: string): Promise<SerialPortError> =>
  openPort(path, 115_200, deaf).then(
    () => {
      throw new Error('opened');
    },
    (error: SerialPortError) => error,
  );

describe('a serial port that does not open', () => {
  it('says that there is no such port, and how to list the ports', async () => {
    const error = await refusal('/dev/ttyACM-none');
    expect(error).toBeInstanceOf(SerialPortError);
    expect(error).toMatchObject({ code: 'port-no-such-port', exitCode: 2 });
    expect(error.message).toContain('/dev/ttyACM-none');
    expect(error.remedy).toContain('readers');
    expect(error.cause).toBeInstanceOf(Error);
  });

  it('says that a file is no port', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'dwellwright-port-'));
    const file = join(folder, 'notes.txt');
    writeFileSync(file, 'x');
    expect(await refusal(file)).toMatchObject({ code: 'port-not-a-port' });
    rmSync(folder, { recursive: true });
  });

  it.skipIf(NO_PTY !== null)('says that another program holds the port', async () => {
    const reader = ptyReader();
    await reader.plugIn();
    const first = await openPort(reader.path, 115_200, deaf);
    expect(await refusal(reader.path)).toMatchObject({ code: 'port-busy' });
    await first.close();
    await (await openPort(reader.path, 115_200, deaf)).close();
    await reader.remove();
  });

  it("tells from the system's sentence where the file system cannot: Windows, and a user without rights", async () => {
    const trouble = async (message: string) =>
      (await toSerialPortError('/dev/null', new Error(message))).trouble;
    expect(await trouble('Opening COM3: File not found')).toBe('no-such-port');
    expect(await trouble('Opening COM3: Access denied')).toBe('busy');
    expect(await trouble('Error: Permission denied, cannot open /dev/ttyUSB0')).toBe('not-permitted');
    expect(await trouble('Error: Invalid argument setting custom baud rate of 123')).toBe('bad-baud');
    expect(await trouble('Error: Inappropriate ioctl for device, cannot open /dev/null')).toBe('not-a-port');
    expect(await trouble('something else')).toBe('unknown');
  });

  it('shows no control character of a path', async () => {
    expect((await refusal('/dev/tty\u001b[2J')).message).not.toContain('\u001b');
  });
});
