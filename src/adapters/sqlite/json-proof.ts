import { createHash } from 'node:crypto';

/** SHA-256 of a stored JSON text, kept beside it: a figure that was altered reads as well as before, but does not fit. */
export const jsonProof = (json: string): string => createHash('sha256').update(json, 'utf8').digest('hex');

/** Whether a stored text is as it was written; one of an earlier program has no proof and cannot be told. */
export const fitsProof = (json: string, proof: string | null): boolean =>
  proof === null || proof === jsonProof(json);
