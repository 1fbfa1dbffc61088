import { recognisedProtocol } from '../../text/recognised-protocol.ts';
import type { LineDecoder, ReaderIdentity, ReceivedLine, WireEvent, WireTrouble } from '../WireEvent.ts';
import { BAD_CHECKSUM, checkSeal } from './check-seal.ts';
import { decodeRareLine } from './decode-rare-line.ts';
import { decodeSample } from './decode-sample.ts';
import { PROTOCOL_CLOCK_WRAP_US, PROTOCOL_LONGEST_LINE, PROTOCOL_SEQUENCE_WRAP } from './protocol-limits.ts';

const SAMPLE = [...'sample '].map((letter) => letter.charCodeAt(0));

/**
 * Decodes the reader protocol of firmware-protocol.md. Only a line with a right checksum says anything; a line
 * whose start was not seen is taken if its checksum vouches for it, one whose end was not seen never is.
 */
export function createProtocolDecoder(): LineDecoder {
  const bytes = new Uint8Array(PROTOCOL_LONGEST_LINE);
  let identity: ReaderIdentity | null = null;
  let proven = false;

  const trouble = (kind: WireTrouble, line: ReceivedLine): readonly WireEvent[] => [
    { kind: 'trouble', trouble: kind, text: line.text },
  ];

  function decode(line: ReceivedLine): readonly WireEvent[] {
    if (line.wholeness === 'over-long' || line.wholeness === 'cut-off') return trouble(line.wholeness, line);
    const length = checkSeal(line.text, bytes);
    if (length < 0) {
      if (line.text === '') return [{ kind: 'remark', text: '' }];
      if (line.wholeness === 'start-unknown') return trouble('start-unknown', line);
      if (line.text.length > PROTOCOL_LONGEST_LINE) return trouble('over-long', line);
      return trouble(length === BAD_CHECKSUM ? 'bad-checksum' : 'garbage', line);
    }
    const event = isSample(bytes, length)
      ? decodeSample(bytes, SAMPLE.length, length)
      : decodeRareLine(line.text.slice(0, length));
    if (event === null) return trouble('malformed', line);
    if (event === 'unknown-kind') return [{ kind: 'remark', text: line.text.slice(0, length) }];
    proven = true;
    if (event.kind === 'sample' && identity !== null && event.channels.length !== identity.channels.length) {
      return trouble('malformed', line);
    }
    if (event.kind === 'identity') identity = event.identity;
    if (event.kind === 'started') identity = null;
    return [event];
  }

  return {
    decode,
    get recognised() {
      return proven ? recognisedProtocol(identity) : null;
    },
    clockWrapUs: PROTOCOL_CLOCK_WRAP_US,
    sequenceWrap: PROTOCOL_SEQUENCE_WRAP,
  };
}

function isSample(bytes: Uint8Array, length: number): boolean {
  if (length <= SAMPLE.length) return false;
  for (let at = 0; at < SAMPLE.length; at++) if (bytes[at] !== SAMPLE[at]) return false;
  return true;
}
