import { LoggerFileProblem } from './LoggerFileProblem.ts';

/** A longer file does not fit into one text of the JavaScript engine. */
const LARGEST_BYTES = 500_000_000;

/** Windows writes these 32 characters where Latin-1 has control codes; headings with ° and µ are the same in both. */
function decode(bytes: Uint8Array, encoding: string): string {
  return new TextDecoder(encoding).decode(bytes);
}

function looksUtf16(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  const head = bytes.subarray(0, 200);
  let evenZero = 0;
  let oddZero = 0;
  head.forEach((byte, at) => {
    if (byte !== 0) return;
    if (at % 2 === 0) evenZero += 1;
    else oddZero += 1;
  });
  const half = head.length / 2;
  if (head.length < 8) return undefined;
  if (oddZero > 0.8 * half && evenZero === 0) return 'utf-16le';
  return evenZero > 0.8 * half && oddZero === 0 ? 'utf-16be' : undefined;
}

/**
 * Text of a logger's file from its bytes: UTF-8, UTF-16 either way round (by its byte order mark, or by
 * every second byte being zero), else Windows-1252 (Latin-1). The byte order mark is taken off.
 */
export function loggerFileText(bytes: Uint8Array): string | LoggerFileProblem {
  if (bytes.length > LARGEST_BYTES) {
    return new LoggerFileProblem(
      'logger-file-too-large',
      `a file of at most ${LARGEST_BYTES / 1e6} MB was expected, ${Math.round(bytes.length / 1e6)} MB came`,
      'cut the file into parts, one run or more each',
    );
  }
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return decode(bytes, 'utf-16le');
  if (first === 0xfe && second === 0xff) return decode(bytes, 'utf-16be');
  const wide = looksUtf16(bytes);
  if (wide) return decode(bytes, wide);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // Not UTF-8: one byte a character then. A UTF-8 file cut inside its last character also comes here and
    // loses only the look of that character.
    return decode(bytes, 'windows-1252');
  }
}
