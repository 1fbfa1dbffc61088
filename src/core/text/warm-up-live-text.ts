import type { PlatenReadiness } from '../warm-up/ReadyWatch.ts';
import type { ChannelFault } from '../wire/WireEvent.ts';
import { neutralise } from './neutralise.ts';
import { FAULT_TEXT } from './screen-text.ts';
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
  helpTitle: 'Warm-up: help',
  simulated: 'SIMULATED',
  state: {
    'no-reader': 'NO READER',
    'no-reading': 'WAITING',
    stale: 'OLD READING',
    fault: 'FAULT',
    cold: 'COLD',
    heating: 'HEATING',
    cooling: 'COOLING',
    near: 'NEAR',
    above: 'ABOVE BAND',
    below: 'BELOW BAND',
    'in-band': 'IN BAND',
    ready: 'READY',
  },
  /** In block letters under COLD. */
  nextHeaters: 'P: HEATERS',
  read: 'READ THIS',
  readAsk: 'Read these once a shift, then press Enter. Readings are kept meanwhile.',
  /** `sets`: set points, one where all platens have the same. */
  rule: (sets: readonly PlatenReadiness[], bandC: number, forS: number, unit: TemperatureUnit) => {
    const [first] = sets;
    const same = first !== undefined && sets.every(({ setPointC }) => setPointC === first.setPointC);
    const target = same
      ? temperatureText(first.setPointC, unit)
      : `set point (${sets.map(({ label, setPointC }) => `${brief(label)} ${degrees(setPointC, unit)}`).join(', ')})`;
    return `READY: every platen inside ${target} ± ${differenceText(bandC, unit)} for ${clock(forS)}.`;
  },
  /** Below the figure in block digits: which platen it is, and how far from its set point. */
  caption: (
    { label, temperatureC, setPointC }: PlatenReadiness,
    which: 'colder' | 'hotter' | null,
    unit: TemperatureUnit,
  ): string => {
    const name = which === null ? brief(label) : `${which}: ${brief(label)}`;
    if (temperatureC === null) return name;
    const awayC = temperatureC - setPointC;
    if (Math.abs(awayC) < 0.05) return `${name}, at set point`;
    return `${name}, ${short(Math.abs(awayC), unit)} ${awayC < 0 ? 'below' : 'above'}`;
  },
  insideCaption: 'min to READY, all inside',
  oldCaption: (label: string, ageS: number) => `${brief(label)} as it was ${secondsText(ageS, 0)} ago`,
  noCaption: 'no reading',
  elapsed: (seconds: number) => `heaters on for ${clock(seconds)}`,
  platen: (
    letter: string,
    { label, temperatureC }: PlatenReadiness,
    fault: ChannelFault | null,
    unit: TemperatureUnit,
  ): string => {
    if (fault !== null) return `${letter} ${label} FAULT: ${FAULT_TEXT[fault]}`;
    if (temperatureC === null) return `${letter} ${label}: no reading`;
    return `${letter} ${label} ${both(temperatureC, unit)}`;
  },
  noRead: (label: string, channel: number) =>
    `${label}: channel ${channel} gives no reading. See its probe and plug, or name the channels with --roles.`,
  silent: (reader: string, silentS: number) =>
    neutralise(
      silentS < 5
        ? `Waiting for the first reading from ${reader}.`
        : `Nothing has come from ${reader} for ${secondsText(silentS, 0)}. See its power, its cable and --baud; "dwellwright sniff" tells what a port sends.`,
      { longest: 400 },
    ),
  unread: (reader: string, lines: number) =>
    neutralise(
      `${lines} lines came from ${reader}, but no reading in them. "dwellwright sniff" tells what it sends; --baud may be wrong.`,
      { longest: 400 },
    ),
  opening: 'The reader is being opened.',
  lost: 'READER LOST: no platen is watched. Plug it in again; recording goes on by itself.',
  old: (ageS: number) =>
    `No reading for ${secondsText(ageS, 0)}: figures are from then. See the reader and its cable.`,
  fault: (label: string, fault: ChannelFault) =>
    `${label}: ${FAULT_TEXT[fault]}. No figure is shown for it; see probe and plug.`,
  markHeaters: 'Press P when the heaters go on: times then count from power-on.',
  noRise: (seconds: number) =>
    `Heaters on for ${clock(seconds)}, but no platen rises. Are the heaters on, and the probes in place?`,
  above: 'Above the band: wait until every platen is back inside. If it stays, see the controller.',
  below: 'Fell out of the band: READY counts anew once every platen is back inside.',
  cooling: 'The platens cool. Heaters off?',
  heatersMarked: 'Heaters on: marked. U takes it back.',
  heatersTakenBack: 'Heaters on: taken back.',
  simulatedHeaters: 'The simulated heaters go on.',
  together: 'Several keys at once: none counted. Press one key.',
  scanIgnored: 'A scan does nothing here.',
  askQuit: 'Leave the warm-up? The recording so far is kept; READY is no longer watched. Y yes, Esc no.',
  askHeaters: 'Heaters on again? Times count from now on; the earlier mark stays. Y yes, Esc no.',
  recording: (recordingId: string) => `Recording ${recordingId}.`,
  ended: (recordingId: string, ready: boolean) =>
    `${ready ? 'READY was reached.' : 'READY was not reached.'} Kept as recording ${recordingId}: dwellwright warm-up ${recordingId}`,
  homeNoReader: 'warm-up: no reader chosen yet',
  homeSetUp: 'Press S, then say where the reader is plugged in; the simulated reader can be chosen there too',
  homeNoPress: 'warm-up: no press chosen yet',
  homeChoose: 'Press S and add or choose a press, or start a trial on one first',
  marks: { heaters: 'heaters on', ready: 'READY' },
  /** As notes in the recording. The first is what an analysis looks for; the second takes the latest of them back. */
  notes: {
    heatersOn: 'heaters on',
    takenBack: 'taken back: heaters on',
    cautions: 'cautions read and understood',
  },
  status: {
    lost: (reader: string) => neutralise(`LOST ${reader}`),
    opening: (reader: string) => neutralise(`opening ${reader}`),
    rate: (perS: number) => `${numberText(perS, perS < 10 ? 1 : 0)} readings/s`,
    age: (ageS: number) => `reading ${secondsText(ageS, 0)} old`,
    lines: (lost: number) => `${lost} lost ${lost === 1 ? 'line' : 'lines'}`,
    noReading: 'no reading yet',
  },
  /** Fits a window of 80 × 24 whole. */
  help: [
    'Records every platen from cold to READY and tells when READY may come.',
    '',
    'P    heaters on: marks power-on, the start of the warm-up. U takes it back.',
    '     Later again it asks first; the same key within 1 s counts once.',
    'F    changes between °F and °C.',
    'H    this page. Esc goes back.',
    'Q    asks, then leaves. Everything that came is kept.',
    '',
    'COLD: no platen rises.  HEATING: on the way.  NEAR: within 45 °F (25 °C).',
    'IN BAND: every platen inside; the time to READY counts down.',
    'BELOW BAND, ABOVE BAND: a platen is outside again; READY counts anew.',
    'OLD READING, FAULT, NO READER: nothing is known now; grey figures are old.',
    'One odd reading breaks nothing; 10 s without readings does.',
    'READY in: earliest to latest by the rise so far; no platen leaving the band.',
    'Chart: U upper, L lower; near set point the latest 15 min, the band shaded.',
    'Afterwards: dwellwright warm-up ID; --explain says what each figure means.',
  ],
  keys: {
    heaters: { key: 'P', does: 'heaters on' },
    undo: { key: 'U', does: 'undo heaters on' },
    read: { key: 'Enter', does: 'read and understood' },
    unit: { key: 'F', does: '°F/°C' },
    help: { key: 'H', does: 'help' },
    quit: { key: 'Q', does: 'leave' },
    yes: { key: 'Y', does: 'yes' },
    no: { key: 'Esc', does: 'no' },
    back: { key: 'Esc', does: 'back' },
  },
} as const;

/** "5:00 min". */
export function clock(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  return `${numberText(Math.floor(whole / 60), 0)}:${String(whole % 60).padStart(2, '0')} min`;
}

/** "upper" of "upper platen", its channel kept where several lie on one platen. */
function brief(label: string): string {
  return label.replace(' platen', '');
}

/** "448.1 °F = 231.2 °C", the chosen unit first. */
function both(temperatureC: number, unit: TemperatureUnit): string {
  return `${degrees(temperatureC, unit)} = ${degrees(temperatureC, unit === 'F' ? 'C' : 'F')}`;
}

function degrees(temperatureC: number, unit: TemperatureUnit): string {
  return `${numberText(unit === 'F' ? temperatureC * 1.8 + 32 : temperatureC, 1)} °${unit}`;
}

function short(differenceC: number, unit: TemperatureUnit): string {
  return `${numberText(unit === 'F' ? differenceC * 1.8 : differenceC, 1)} °${unit}`;
}
