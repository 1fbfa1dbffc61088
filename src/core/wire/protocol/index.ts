/** What others may use of the reader protocol (firmware-protocol.md). */
export {
  identifyCommand,
  rateCommand,
  startCommand,
  stopCommand,
  thermocoupleTypeCommand,
} from './commands.ts';
export { createProtocolDecoder } from './create-protocol-decoder.ts';
export { formatContact } from './format-contact.ts';
export { formatIdentity } from './format-identity.ts';
export { formatNote } from './format-note.ts';
export { formatOverflow } from './format-overflow.ts';
export { formatErrorReply, formatReply } from './format-reply.ts';
export { formatSample, type SampleFormat } from './format-sample.ts';
export { formatStarted } from './format-started.ts';
export { isProtocolLine } from './is-protocol-line.ts';
export {
  PROTOCOL_BAUD,
  PROTOCOL_CLOCK_WRAP_US,
  PROTOCOL_LONGEST_LINE,
  PROTOCOL_SEQUENCE_WRAP,
} from './protocol-limits.ts';
export { type CommandProblem, type ReaderCommand, readCommand } from './read-command.ts';
