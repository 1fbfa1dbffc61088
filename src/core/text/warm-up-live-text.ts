import type { PlatenReadiness } from '../warm-up/ReadyWatch.ts';
import { neutralise } from './neutralise.ts';
import {
  differenceText,
  numberText,
  secondsText,
  type TemperatureUnit,
  temperatureText,
} from './units-text.ts';

/** Words of the live warm-up. It states what is; it never commands a press. */
export const WARM_UP_LIVE_TEXT = {
  title: (press: string) => neutralise(`Warm-up of ${press}`),
  simulated: 'SIMULATED',
  state: {
    'no-reader': 'NO READER',
    'no-reading': 'NO READING',
    stale: 'OLD READING',
    heating: 'HEATING',
    above: 'ABOVE BAND',
    'in-band': 'IN BAND',
    ready: 'READY',
  },
  platen: ({ label, temperatureC, setPointC }: PlatenReadiness, unit: TemperatureUnit): string => {
    const from = `set point ${temperatureText(setPointC, unit)}`;
    if (temperatureC === null) return `${label}: no reading; ${from}.`;
    const awayC = temperatureC - setPointC;
    if (Math.abs(awayC) < 0.05) return `${label}; at ${from}.`;
    return `${label}; ${from}; ${differenceText(Math.abs(awayC), unit)} ${awayC < 0 ? 'below' : 'above'}.`;
  },
  rule: (bandC: number, forS: number, unit: TemperatureUnit) =>
    `READY: every platen inside set point ± ${differenceText(bandC, unit)} for ${clock(forS)}.`,
  inside: (insideForS: number, forS: number) => `Inside the band for ${clock(insideForS)} of ${clock(forS)}.`,
  lost: 'READER LOST. No platen is watched until it is back.',
  noReading: 'Waiting for a reading from every platen.',
  old: (ageS: number) => `The latest reading is ${secondsText(ageS, 0)} old; figures are from then.`,
  recording: (recordingId: string) => `Recording ${recordingId}.`,
  ended: (recordingId: string, ready: boolean) =>
    `${ready ? 'READY was reached.' : 'READY was not reached.'} Kept as recording ${recordingId}.`,
  keys: {
    unit: { key: 'F', does: '°F/°C' },
    quit: { key: 'Q', does: 'leave, recording kept' },
  },
} as const;

function clock(seconds: number): string {
  const whole = Math.floor(seconds);
  return `${numberText(Math.floor(whole / 60), 0)}:${String(whole % 60).padStart(2, '0')} min`;
}
