import { createSha256Hasher } from '../recording/create-sha256-hasher.ts';

const PLAIN = /^[A-Za-z0-9][A-Za-z0-9._-]{0,99}$/;
/** Names that one family of systems keeps for devices, with any ending. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i;

/** File name of an exported recording: its id where that is a plain name, else the plain part of it and a hash. */
export function recordingFileName(recordingId: string): string {
  const plain = PLAIN.test(recordingId) && !DEVICE.test(recordingId) && !recordingId.endsWith('.');
  return `${plain ? recordingId : hashedName(recordingId)}.dwell.txt`;
}

function hashedName(recordingId: string): string {
  const hasher = createSha256Hasher();
  hasher.update(recordingId);
  const letters = recordingId
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `recording-${letters}-${hasher.digestHex().slice(0, 12)}`;
}
