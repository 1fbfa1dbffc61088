import { setTimeout as wait } from 'node:timers/promises';
import { createMonotonicClock } from '../../adapters/host/create-monotonic-clock.ts';
import { createSerialLink } from '../../adapters/serial/create-serial-link.ts';
import { createLineSource } from '../../core/reading/create-line-source.ts';
import { createSniffer } from '../../core/sniff/create-sniffer.ts';
import { sniffReportLines } from '../../core/text/sniff-report.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { createReaderDecoder } from '../../core/wire/create-reader-decoder.ts';
import { identifyCommand, startCommand } from '../../core/wire/protocol/commands.ts';
import { parseCount } from '../options/parse-count.ts';
import { print, printJson } from '../output/print.ts';

interface SniffOptions {
  readonly seconds: string;
  readonly baud: string;
  readonly unit?: 'C' | 'F' | 'K';
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

/** `sniff PORT`: listens for a while and says what the reader is and how well it works. Records nothing. */
export async function sniff(path: string, options: SniffOptions): Promise<void> {
  const listenS = parseDuration(options.seconds, '--seconds');
  const clock = createMonotonicClock();
  const sniffer = createSniffer({
    decoder: createReaderDecoder(options.unit === undefined ? {} : { statedUnit: options.unit }),
  });
  const source = createLineSource({ startUs: clock.nowUs(), onEntry: (entry) => sniffer.accept(entry) });
  const link = createSerialLink({
    path,
    baudRate: parseCount(options.baud, '--baud', { least: 300, most: 4_000_000 }),
    clock,
    onOpenCommands: [identifyCommand(), startCommand()],
  });
  await link.open(source);
  await wait(listenS * 1000, undefined, { signal: interrupted() }).catch(() => undefined);
  await link.close();
  source.finish(clock.nowUs());
  const { report } = sniffer;
  if (options.json) printJson(report);
  else print(sniffReportLines(report, options.show).join('\n'));
  if (report.counts.readings === 0) process.exitCode = 1;
}

/** Ctrl-C ends the listening early; what was heard is still told. */
function interrupted(): AbortSignal {
  const controller = new AbortController();
  process.once('SIGINT', () => controller.abort());
  return controller.signal;
}
