import { createPlainDecoder } from './plain/create-plain-decoder.ts';
import { createProtocolDecoder } from './protocol/create-protocol-decoder.ts';
import { isProtocolLine } from './protocol/is-protocol-line.ts';
import type { LineDecoder } from './WireEvent.ts';

export interface ReaderDecoderOptions {
  /** Unit of a plain reader's values, where the user stated it. */
  readonly statedUnit?: 'C' | 'F' | 'K';
}

/** A line of the reader protocol ends so, though its checksum may be wrong. */
const SEALED = /#[0-9A-Fa-f]{4}$/;

/**
 * Decodes a reader of unknown kind. The first line with a right checksum settles on the reader protocol for good,
 * whatever came before it: a checksum proves itself, a plain layout is only likely. Until then lines go to the plain
 * decoder, except those that end in a (wrong) checksum: their digits must not pass for a plain reading.
 */
export function createReaderDecoder(options: ReaderDecoderOptions = {}): LineDecoder {
  const protocol = createProtocolDecoder();
  const plain = createPlainDecoder(options);
  let settled = false;
  const current = (): LineDecoder => (settled ? protocol : plain);

  return {
    decode(line) {
      settled ||= line.wholeness !== 'cut-off' && line.wholeness !== 'over-long' && isProtocolLine(line.text);
      if (settled) return protocol.decode(line);
      const damaged = plain.recognised === null && SEALED.test(line.text);
      return damaged ? protocol.decode(line) : plain.decode(line);
    },
    get recognised() {
      return current().recognised;
    },
    get clockWrapUs() {
      return current().clockWrapUs;
    },
    get sequenceWrap() {
      return current().sequenceWrap;
    },
  };
}
