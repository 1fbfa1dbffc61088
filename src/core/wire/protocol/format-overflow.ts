import { sealLine } from './seal-line.ts';

/** Writes how many samples the reader took but could not send since it last said so; 65,535 stands for more too. */
export function formatOverflow(lostSamples: number): string {
  return sealLine(`overflow ${Math.min(lostSamples, 65_535)}`);
}
