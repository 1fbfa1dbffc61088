import crc16ccitt from 'crc/calculators/crc16ccitt';

/**
 * Checksum of a line's content: CRC-16/IBM-3740 (polynomial 0x1021, start 0xFFFF, nothing reflected, nothing
 * added at the end; check value 0x29B1 over "123456789"; catalogue of parametrised CRC algorithms).
 * The crc package computes it; its inner function is called on the bytes so that no buffer is made per line.
 */
export function lineChecksum(content: Uint8Array): number {
  return crc16ccitt(content);
}
