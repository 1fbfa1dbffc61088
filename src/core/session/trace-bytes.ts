import type { DecodedTrace } from './DecodedTrace.ts';

const FLOATS = ['timesS', 'arrivedUs', 'temperaturesC'] as const;

/** A decoded trace as bytes: a JSON head with its length before it, padded to 8, then the arrays (little-endian doubles, bytes). */
export function traceToBytes(trace: DecodedTrace): Uint8Array {
  const head = new TextEncoder().encode(
    JSON.stringify({
      channels: trace.channels,
      readings: trace.timesS.length,
      clocks: trace.clocks,
      others: trace.others,
    }),
  );
  const arrays = FLOATS.map((name) => trace[name]);
  const headEnd = padded(4 + head.length);
  const bytes = new Uint8Array(
    headEnd + arrays.reduce((sum, one) => sum + one.byteLength, 0) + trace.kinds.length,
  );
  new DataView(bytes.buffer).setUint32(0, head.length, true);
  bytes.set(head, 4);
  let at = headEnd;
  for (const array of arrays) {
    bytes.set(new Uint8Array(array.buffer, array.byteOffset, array.byteLength), at);
    at += array.byteLength;
  }
  bytes.set(trace.kinds, at);
  return bytes;
}

/** The trace again, a view of the bytes; null for bytes that are none. Needs a little-endian machine, which all that run Node.js 20 are but one. */
export function traceFromBytes(bytes: Uint8Array): DecodedTrace | null {
  // The doubles must lie on their boundaries: copied where they do not.
  const { buffer, byteOffset: start, byteLength } = bytes.byteOffset % 8 === 0 ? bytes : bytes.slice();
  if (byteLength < 4) return null;
  const headLength = new DataView(buffer, start).getUint32(0, true);
  if (4 + headLength > byteLength) return null;
  const head = JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, start + 4, headLength))) as Pick<
    DecodedTrace,
    'channels' | 'clocks' | 'others'
  > & { readonly readings: number };
  const { channels, readings, clocks, others } = head;
  const values = readings * channels;
  let at = start + padded(4 + headLength);
  if (at - start + 8 * (2 * readings + values) + values !== byteLength) return null;
  const floats = (length: number): Float64Array => {
    const array = new Float64Array(buffer, at, length);
    at += 8 * length;
    return array;
  };
  const timesS = floats(readings);
  const arrivedUs = floats(readings);
  const temperaturesC = floats(values);
  const kinds = new Uint8Array(buffer, at, values);
  return { channels, timesS, arrivedUs, temperaturesC, kinds, clocks, others };
}

const padded = (length: number): number => Math.ceil(length / 8) * 8;
