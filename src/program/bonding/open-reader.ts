import { createMonotonicClock } from '../../adapters/host/create-monotonic-clock.ts';
import { createSleepWatch } from '../../adapters/host/create-sleep-watch.ts';
import { identifyCommand, rateCommand, startCommand } from '../../core/wire/protocol/commands.ts';
import type { TrialReader } from '../live/TrialReader.ts';
import { parseCount } from '../options/parse-count.ts';
import { parseNumber } from '../options/parse-number.ts';

export interface PortOptions {
  readonly baud?: string;
  readonly rate?: string;
}

/** The reader on a serial port, for a page that records. */
export async function openPort(path: string, options: PortOptions): Promise<TrialReader> {
  const host = createMonotonicClock();
  const { createSerialLink } = await import('../../adapters/serial/create-serial-link.ts');
  const rate =
    options.rate === undefined
      ? []
      : [rateCommand(parseNumber(options.rate, '--rate', { least: 0.1, most: 1000 }))];
  const link = createSerialLink({
    path,
    baudRate: parseCount(options.baud ?? '115200', '--baud', { least: 300, most: 4_000_000 }),
    clock: host,
    onOpenCommands: [identifyCommand(), ...rate, startCommand()],
  });
  return {
    link,
    clock: host,
    speed: 1,
    watchSleep: (onSlept) => createSleepWatch({ clock: host, onSlept }),
  };
}
