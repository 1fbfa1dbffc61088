import { formatErrorReply, formatReply, readCommand } from '../wire/protocol/index.ts';

/** What the reader says to a command, and what changes in it. */
export interface Answer {
  readonly reply: string | null;
  /** Its identity line follows. */
  readonly identity: boolean;
  readonly sending: boolean | null;
  readonly rateHz: number | null;
}

const NOTHING: Answer = { reply: null, identity: false, sending: null, rateHz: null };

/** The reader's side of a host command, as firmware-protocol.md lays down. Thermocouple types are fixed. */
export function replyTo(
  line: string,
  reader: { readonly ratesHz: readonly number[]; readonly channels: number },
): Answer {
  const command = readCommand(line);
  switch (command.kind) {
    case 'identify':
      return { ...NOTHING, identity: true };
    case 'start':
    case 'stop':
      return { ...NOTHING, reply: formatReply(command.kind), sending: command.kind === 'start' };
    case 'rate':
      return reader.ratesHz.includes(command.hz)
        ? { ...NOTHING, reply: formatReply(`rate ${command.hz}`), identity: true, rateHz: command.hz }
        : { ...NOTHING, reply: formatErrorReply('range', 'rate') };
    case 'type': {
      const exists = command.channel >= 1 && command.channel <= reader.channels;
      return { ...NOTHING, reply: formatErrorReply(exists ? 'fixed' : 'range', 'type') };
    }
    case 'refused':
      return { ...NOTHING, reply: formatErrorReply(command.problem, command.word) };
  }
}
