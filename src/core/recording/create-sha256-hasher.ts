import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Hasher } from './Hasher.ts';

/** SHA-256 (FIPS 180-4) without any machine-near help; correct everywhere, about ten times slower than the host's own. */
export function createSha256Hasher(): Hasher {
  const hash = sha256.create();
  return {
    update: (text) => {
      hash.update(utf8ToBytes(text));
    },
    digestHex: () => bytesToHex(hash.digest()),
  };
}
