import { describe, expect, test } from 'vitest';
import { lineChecksum } from '../../../../src/core/wire/protocol/line-checksum.ts';
import catalogue from '../../../reference/crc-catalogue.json' with { type: 'json' };

// tests/reference/crc-catalogue.json: catalogue of parametrised CRC algorithms; codewords from the
// AUTOSAR Specification of CRC Routines, 7.2.2.1 (each codeword is data and its checksum).
const entry = catalogue.entries.find(({ name }) => name.startsWith('CRC-16/IBM-3740'));

describe('checksum of a line (CRC-16/IBM-3740)', () => {
  test('"123456789" gives the catalogue check value 0x29B1', () => {
    expect(entry?.check).toBe('0x29b1');
    expect(lineChecksum(new TextEncoder().encode(catalogue.check_input_ascii))).toBe(Number(entry?.check));
  });

  test.each(catalogue.extra_codewords_crc16_ccitt_false)('published codeword %s', (codeword) => {
    const bytes = Uint8Array.from(Buffer.from(codeword, 'hex'));
    const [high, low] = bytes.slice(-2);
    expect(lineChecksum(bytes.slice(0, -2))).toBe(((high ?? 0) << 8) | (low ?? 0));
  });
});
