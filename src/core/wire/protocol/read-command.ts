import type { ThermocoupleType } from '../WireEvent.ts';
import { BAD_CHECKSUM, checkSeal } from './check-seal.ts';
import { PROTOCOL_LONGEST_COMMAND } from './protocol-limits.ts';

/** Why a reader did not carry out a command. */
export type CommandProblem = 'checksum' | 'unknown' | 'arguments' | 'range' | 'fixed' | 'busy';

export type ReaderCommand =
  | { readonly kind: 'identify' }
  | { readonly kind: 'start' }
  | { readonly kind: 'stop' }
  | { readonly kind: 'rate'; readonly hz: number }
  | { readonly kind: 'type'; readonly channel: number; readonly type: ThermocoupleType }
  | { readonly kind: 'refused'; readonly problem: CommandProblem; readonly word: string | null };

const WORDS = ['identify', 'start', 'stop', 'rate', 'type'];

/**
 * Reads a host command on the reader's side (the simulated reader does). A command without a seal is taken, so that
 * a person can type it; one with a wrong seal is refused. Whether a rate or channel exists is the reader's to say.
 */
export function readCommand(line: string): ReaderCommand {
  const bytes = new Uint8Array(PROTOCOL_LONGEST_COMMAND);
  const length = checkSeal(line, bytes);
  const word = /^[a-z]+(?=[ #]|$)/.exec(line)?.[0] ?? '';
  const refused = (problem: CommandProblem): ReaderCommand => ({
    kind: 'refused',
    problem,
    word: WORDS.includes(word) ? word : null,
  });
  if (length === BAD_CHECKSUM || (length < 0 && line.includes('#'))) return refused('checksum');
  const content = length < 0 ? line : line.slice(0, length);
  switch (content) {
    case 'identify':
    case 'start':
    case 'stop':
      return { kind: content };
  }
  if (!WORDS.includes(word)) return refused('unknown');
  const rate = /^rate ([0-9]{1,4}(?:\.[0-9]{1,3})?)$/.exec(content)?.[1];
  if (rate !== undefined) return { kind: 'rate', hz: Number(rate) };
  const [, channel, type] = /^type ([0-9]{1,2}) ([A-Z])$/.exec(content) ?? [];
  if (channel === undefined || type === undefined) return refused('arguments');
  if (!'KJTENRSB'.includes(type)) return refused('range');
  return { kind: 'type', channel: Number(channel), type: type as ThermocoupleType };
}
