import { access } from 'node:fs/promises';
import type { SerialPort } from 'serialport';
import { toSerialPortError } from './SerialPortError.ts';

/** How often an open port is asked whether it is still there, ms. */
const ASK_EVERY_MS = 100;
/** A reader that takes no commands must not make a queue: more than this unsent and further ones are dropped. */
const UNSENT_LIMIT_BYTES = 4096;

export interface OpenPort {
  write(text: string): void;
  close(): Promise<void>;
}

export interface OpenPortListener {
  bytes(chunk: Uint8Array): void;
  /** Called once, unless `close` was called before. The port is closed already or about to be. */
  gone(cause: string): void;
}

/**
 * Opens one serial port once. A port object is never opened again: an old one would glue an old half line to the
 * first new one and send old commands to whatever is plugged in next.
 *
 * Unplugging: an idle port closes by itself; under data flow the library may spin without noticing. So a port
 * is asked for its baud rate every 100 ms and given up when it does not answer. Where the system cannot answer
 * (macOS: not implemented by the library) its path is looked up instead; Windows reports a failed read itself.
 * Tried on Linux only, over pseudo-terminals; macOS and Windows rest on the library's source.
 */
export async function openPort(
  path: string,
  baudRate: number,
  listener: OpenPortListener,
): Promise<OpenPort> {
  const { SerialPort } = await import('serialport');
  let port: SerialPort;
  try {
    port = await new Promise<SerialPort>((resolve, reject) => {
      const opening = new SerialPort({ path, baudRate, autoOpen: false });
      opening.open((error) => (error ? reject(error) : resolve(opening)));
    });
  } catch (cause) {
    throw await toSerialPortError(path, cause);
  }
  let over = false;
  let guard: NodeJS.Timeout | undefined;
  const end = (cause: string): void => {
    if (over) return;
    over = true;
    clearInterval(guard);
    listener.gone(cause);
  };
  port.on('data', (chunk: Buffer) => {
    if (!over) listener.bytes(chunk);
  });
  // Errors in flight: each of them also shows as a close or in the next question below.
  port.on('error', () => undefined);
  port.on('close', (error: Error | null) => end(error?.message ?? 'closed'));
  port.on('end', () => end('no more data'));

  const ask = await questionFor(port, path);
  let asking = false;
  guard = setInterval(() => {
    if (ask === null || asking || over) return;
    asking = true;
    ask().then(
      () => {
        asking = false;
      },
      (error: Error) => {
        end(error.message);
        void closeQuietly(port);
      },
    );
  }, ASK_EVERY_MS);

  return {
    write(text) {
      if (over || !port.isOpen || port.writableLength > UNSENT_LIMIT_BYTES) return;
      // A failed write closes the port, which is reported there.
      port.write(text, 'latin1', () => undefined);
    },
    close() {
      over = true;
      clearInterval(guard);
      return closeQuietly(port);
    },
  };
}

/** What to ask this port now and then; null where the system reports an unplug by itself. */
async function questionFor(port: SerialPort, path: string): Promise<(() => Promise<unknown>) | null> {
  const binding = port.port as { getBaudRate?: () => Promise<unknown> } | undefined;
  const askBaudRate = async (): Promise<unknown> => binding?.getBaudRate?.();
  try {
    await askBaudRate();
    return askBaudRate;
  } catch {
    // Not answered right after opening: this system cannot.
    return process.platform === 'win32' ? null : () => access(path);
  }
}

/** Drops what was not sent (a lost port would wait for it) and closes. */
function closeQuietly(port: SerialPort): Promise<void> {
  return new Promise((resolve) => {
    if (!port.isOpen) return resolve();
    port.flush(() => port.close(() => resolve()));
  });
}
