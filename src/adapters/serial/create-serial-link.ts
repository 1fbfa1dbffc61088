import { access } from 'node:fs/promises';
import type { MonotonicClock, ReaderLink, ReaderLinkListener } from '../../core/reading/ReaderLink.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { lostCauseText } from '../../core/text/port-trouble.ts';
import { findPortAgain, identifyPort, type PortIdentity } from './find-port-again.ts';
import { listPorts } from './list-ports.ts';
import { type OpenPort, openPort } from './open-port.ts';

const TRY_AGAIN_MS = 250;
/** Listing ports starts a program on Linux: only at every fourth attempt. */
const LOOK_ELSEWHERE_EVERY = 4;

export interface SerialLinkOptions {
  readonly path: string;
  readonly baudRate: number;
  readonly clock: MonotonicClock;
  /** Sent after each opening (identify, start), without line ends. */
  readonly onOpenCommands?: readonly string[];
  /** How to list the ports of this computer. */
  readonly list?: typeof listPorts;
}

/**
 * A reader at a serial port. Once open it stays at it: when the port goes away, it tries the same path again every
 * 250 ms until it is closed. Where the system tells serial numbers, only the same reader is taken, also under
 * another path. Commands given meanwhile are dropped. Refuses at `open` (SerialPortError) when the port cannot be opened the first time.
 */
export function createSerialLink(options: SerialLinkOptions): ReaderLink {
  const { path, baudRate, clock, onOpenCommands = [], list = listPorts } = options;
  let listener: ReaderLinkListener | null = null;
  let port: OpenPort | null = null;
  let identity: PortIdentity | null = null;
  let timer: NodeJS.Timeout | undefined;
  let attempt: Promise<void> = Promise.resolve();
  let closed = false;
  let attempts = 0;

  const connect = async (at: string): Promise<void> => {
    // Bytes may come before the opening is told; they wait, so that `back` goes before them.
    const early: { chunk: Uint8Array; arrivedUs: number }[] = [];
    let told = false;
    let goneEarly: string | null = null;
    const opened = await openPort(at, baudRate, {
      bytes(chunk) {
        const arrivedUs = clock.nowUs();
        if (told) listener?.bytes(chunk, arrivedUs);
        else early.push({ chunk, arrivedUs });
      },
      gone(cause) {
        if (told) lose(cause);
        else goneEarly = cause;
      },
    });
    if (closed) return opened.close();
    if (goneEarly !== null) throw new Error(goneEarly);
    port = opened;
    told = true;
    if (attempts > 0) listener?.back(early[0]?.arrivedUs ?? clock.nowUs());
    for (const { chunk, arrivedUs } of early) listener?.bytes(chunk, arrivedUs);
    attempts = 0;
    for (const command of onOpenCommands) opened.write(`${command}\n`);
  };

  const lose = (cause: string): void => {
    port = null;
    if (closed) return;
    listener?.lost(clock.nowUs(), neutralise(lostCauseText(cause)));
    attempts = 0;
    tryLater();
  };

  const tryLater = (): void => {
    if (closed) return;
    timer = setTimeout(() => {
      attempts += 1;
      attempt = tryAgain().catch(() => tryLater());
    }, TRY_AGAIN_MS);
  };

  const tryAgain = async (): Promise<void> => {
    const there = process.platform === 'win32' || (await exists(path));
    if (identity === null) {
      if (there) await connect(path);
      else tryLater();
      return;
    }
    // Another reader may have taken the old path: it must never be recorded as this one.
    const look = there || attempts % LOOK_ELSEWHERE_EVERY === 0;
    const at = look ? await findPortAgain(identity, path, list) : null;
    if (at === null) tryLater();
    else await connect(at);
  };

  return {
    name: neutralise(path),
    simulated: false,
    async open(newListener) {
      listener = newListener;
      await connect(path);
      // Without an identity only the same path is tried again.
      void identifyPort(path, list).then(
        (found) => {
          identity = found;
        },
        () => undefined,
      );
    },
    send(command) {
      port?.write(`${command}\n`);
    },
    async close() {
      closed = true;
      clearTimeout(timer);
      await attempt;
      await port?.close();
      port = null;
    },
  };
}

function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}
