import { numberText } from './units-text.ts';

/** Words of the lowest line of every screen: reader, rate, what was lost, store, disk. */
export const STATUS_TEXT = {
  lost: (reader: string) => `LOST ${reader}`,
  opening: (reader: string) => `opening ${reader}`,
  readerLost: (reader: string) => `reader LOST (${reader})`,
  noReader: 'no reader',
  noReading: 'no reading yet',
  readingAge: (ageS: number) => `reading ${numberText(ageS, 0)} s old`,
  rate: (perSecond: number) => `${numberText(perSecond, 1)} readings/s`,
  lostLines: (count: number) => `${count} lost ${count === 1 ? 'line' : 'lines'}`,
  gaps: (count: number) => `${count} ${count === 1 ? 'gap' : 'gaps'}`,
  storeTrouble: (why: string) => `NOT ON DISK: ${why}`,
  lostBrief: (count: number) => `${count} lost`,
  simulatedReader: 'simulated reader',
  simulated: 'simulated',
  /** 99 of 100 readings were on disk within this time after they came. */
  onDisk: (p99Ms: number) => `99 % on disk in ${numberText(p99Ms, 0)} ms`,
  onDiskBrief: (p99Ms: number) => `99 % in ${numberText(p99Ms, 0)} ms`,
  free: (bytes: number) => `${numberText(bytes / 1e9, bytes < 10e9 ? 1 : 0)} GB free`,
  store: (path: string) => `store ${path}`,
} as const;
