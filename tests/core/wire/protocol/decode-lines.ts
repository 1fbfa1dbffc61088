import { createLineSplitter } from '../../../../src/core/wire/line-splitter.ts';
import { createProtocolDecoder } from '../../../../src/core/wire/protocol/index.ts';
import type { LineDecoder, WireEvent } from '../../../../src/core/wire/WireEvent.ts';

/** Bytes through splitter and decoder as the program does it; chunk by chunk, then the end of the stream. */
export function decodeBytes(
  chunks: readonly Uint8Array[],
  decoder: LineDecoder = createProtocolDecoder(),
  startKnown = true,
): WireEvent[] {
  const splitter = createLineSplitter({ longestLine: 1024, startKnown });
  const lines = chunks.flatMap((chunk, number) => splitter.push(chunk, number));
  return [...lines, ...splitter.end(chunks.length)].flatMap((line) => decoder.decode(line));
}

/** One whole line through a fresh decoder. */
export function decodeLine(text: string): readonly WireEvent[] {
  return createProtocolDecoder().decode({ arrivedUs: 0, text, wholeness: 'whole' });
}
