import { DwellwrightError } from '../../DwellwrightError.ts';
import type { ThermocoupleType } from '../WireEvent.ts';
import { RATE_HZ } from './protocol-limits.ts';
import { sealLine } from './seal-line.ts';

/** What the host sends, each sealed and without the line end. */

/** Asks the reader for its identity line. */
export function identifyCommand(): string {
  return sealLine('identify');
}

/** Asks for samples; a reader that already sends them goes on undisturbed. */
export function startCommand(): string {
  return sealLine('start');
}

/** Asks for silence; contact edges still come. */
export function stopCommand(): string {
  return sealLine('stop');
}

/** Asks for a sample rate, Hz, one of those that the identity line offers. */
export function rateCommand(hz: number): string {
  if (!(hz >= RATE_HZ.least && hz <= RATE_HZ.most)) {
    throw new DwellwrightError(
      'command-not-sendable',
      `a sample rate requires ${RATE_HZ.least} to ${RATE_HZ.most} Hz, came ${hz}`,
    );
  }
  return sealLine(`rate ${Number(hz.toFixed(RATE_HZ.decimals))}`);
}

/** Tells the reader which thermocouple is wired to a channel (1, 2, …). */
export function thermocoupleTypeCommand(channel: number, type: ThermocoupleType): string {
  if (!Number.isInteger(channel) || channel < 1 || channel > 16) {
    throw new DwellwrightError('command-not-sendable', `a channel requires 1 to 16, came ${channel}`);
  }
  return sealLine(`type ${channel} ${type}`);
}
