import { createHash } from 'node:crypto';
import type { Hasher } from '../../core/recording/Hasher.ts';

/** SHA-256 by the host's own library. */
export function createNativeHasher(): Hasher {
  const hash = createHash('sha256');
  return {
    update: (text) => {
      hash.update(text, 'utf8');
    },
    digestHex: () => hash.digest('hex'),
  };
}
