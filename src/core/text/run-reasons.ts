import type { RunReason, RunReasonCode } from '../run/RunResult.ts';
import { differenceText, numberText, type TemperatureUnit, temperatureText } from './units-text.ts';

interface Figures {
  /** Temperature of this name, in words. */
  t(name: string): string;
  /** Temperature difference. */
  d(name: string): string;
  /** Seconds. */
  s(name: string, decimals?: number): string;
  /** Anything else, as it stands. */
  w(name: string): string;
  /** " on the outer edge (channel 2)", or nothing when no channel is named. */
  where(): string;
  has(name: string): boolean;
}

const ROLE_WORDS: Readonly<Record<string, string>> = {
  'bond-line': 'bond line',
  'bond-line-inner': 'bond line, inner edge',
  'bond-line-outer': 'bond line, outer edge',
  'upper-platen': 'upper platen',
  'lower-platen': 'lower platen',
};

const FAULT_WORDS: Readonly<Record<string, string>> = {
  'open-circuit': 'open circuit: wire broken or plug loose',
  'short-to-ground': 'short to ground',
  'short-to-supply': 'short to supply',
  'over-range': 'over range',
  'cold-junction': 'cold-junction fault',
  unspecified: 'fault value or no number',
};

const CAUSE_WORDS: Readonly<Record<string, string>> = {
  'lost-samples': 'samples lost',
  silence: 'reader silent',
  'reader-restarted': 'reader restarted',
  unplugged: 'reader unplugged',
  'host-asleep': 'computer asleep',
  'clock-backwards': 'clock ran backwards',
  fault: 'probe fault',
};

const SOURCE_WORDS: Readonly<Record<string, string>> = {
  contact: 'contact',
  key: 'key',
  option: 'option',
  onset: 'onset of the rise',
  fall: 'a steep fall of the trace',
};

const SENTENCES: Readonly<Record<RunReasonCode, (f: Figures) => string>> = {
  'target-never-reached': (f) =>
    f.has('channel')
      ? `Target ${f.t('targetC')} was not reached${f.where()}.`
      : f.has('peakC')
        ? `Target ${f.t('targetC')} was never reached; peak ${f.t('peakC')}.`
        : `Target ${f.t('targetC')} was never reached.`,
  'no-press-closed': () => 'Press closed is not known: no contact, no mark, no onset of a rise.',
  'gap-at-crossing': (f) =>
    `Readings are missing for ${f.s('gapS')} at the crossing (${f.w('cause')}); the crossing is known to ± ${f.s('standardUncertaintyS', 2)} only.`,
  'fault-at-crossing': (f) =>
    `The probe gave no valid reading for ${f.s('gapS')} at the crossing; the crossing is known to ± ${f.s('standardUncertaintyS', 2)} only.`,
  'probe-open-circuit': (f) =>
    `Probe fault${f.where()}: ${f.w('fault')}${f.has('faultS') ? `, for ${f.s('faultS')} in all` : ''}. Check plug and wire.`,
  'probe-on-platen': (f) =>
    f.has('platenC')
      ? `Probe${f.where()} jumped to ${f.t('levelC')}, near the platen's ${f.t('platenC')}: it touches a platen.`
      : `Probe${f.where()} jumped by ${f.d('jumpC')} at ${f.s('atS')}: it touches a platen or something hot.`,
  'plug-reversed': (f) =>
    `Temperature${f.where()} falls while the press heats, by ${f.d('fallC')}: plug reversed.`,
  spoilt: (f) => `Marked as spoilt${f.w('why') === '' ? '' : `: ${f.w('why')}`}.`,
  'started-above-target': (f) =>
    `The bond line was at or above target ${f.t('targetC')} from the start: no crossing to time.`,
  'no-readings': () => 'No bond-line channel gave a temperature while the press was closed.',
  'carrier-warm': (f) =>
    `Carrier started warm: ${f.t('startC')}, more than ${f.d('limitC')} above ${f.t('ambientC')}; the soak time is short.`,
  'slow-rise': (f) =>
    `Slow rise: time constant ${f.s('timeConstantS')}, limit ${f.s('limitS')}. Ram pressure low or press not fully closed.`,
  'platen-low': (f) =>
    f.has('lowC')
      ? `${f.w('role')} ${f.d('lowC')} below its set point ${f.t('setPointC')} at closing: not recovered.`
      : 'Platen below its set point at closing: not recovered.',
  'opened-early': (f) =>
    `Press opened after ${f.s('heldS')} of ${f.s('wantedS', 0)} hold (seen by ${f.w('by')}).`,
  'late-mark': (f) =>
    `Press closed was marked ${f.s('lateS')} after the temperature began to rise (by ${f.w('by')}): the soak time is short.`,
  'marks-disagree': (f) =>
    `Marks of press closed differ by ${f.s('disagreementS')} (${f.w('sources')}), limit ${f.s('limitS')}.`,
  'uneven-bond-line': (f) =>
    `Uneven bond line: channels reached the target ${f.s('differenceS')} apart, limit ${f.s('limitS')}. Check platen and carrier for taper.`,
  'probe-not-at-bond-line': (f) =>
    `Probe${f.where()} may not be at the bond line, or its tip is covered: ${
      f.has('plateauC')
        ? `it levels off near ${f.t('plateauC')}, platen ${f.t('platenC')}`
        : f.has('delayS')
          ? `the rise began ${f.s('delayS')} after closing`
          : `it lags by ${f.s('lagS')}`
    }.`,
  'wrong-thermocouple-type': (f) =>
    f.has('platenC')
      ? `Readings${f.where()} do not fit the platens: levels off at ${f.t('plateauC')}, platen ${f.t('platenC')}. Thermocouple type set wrong?`
      : `Readings${f.where()} grow wrong with temperature. Thermocouple type set wrong?`,
  'second-junction': (f) =>
    `Temperature${f.where()} stepped by ${f.d('stepC')} as the press closed: lead crushed, a second junction at the edge?`,
  'extension-reversed': (f) =>
    `Channels differ by ${f.d('differenceC')} at rest${f.where()}: extension lead reversed at both ends?`,
  'ground-shift': (f) =>
    `Value${f.where()} shifts by ${f.d('shiftC')} back and forth ${f.w('shifts')} times: grounded junction or shared ground?`,
  interference: (f) =>
    f.has('spikes')
      ? `Interference${f.where()}: ${f.w('spikes')} spikes.`
      : `Interference${f.where()}: ripple of ${f.d('rippleC')}.`,
  'from-onset': (f) =>
    f.w('takenBack') === 'yes'
      ? 'Press closed was taken back: the run is timed from the onset of the rise, the soak time is short.'
      : f.w('baselineSeen') === 'no'
        ? 'Press closed taken as the first reading: the record begins inside the rise, the soak time is short.'
        : "Press closed taken from the onset of the rise: the heat's way through the part is missing, the soak time is short.",
  'ready-check-not-passed': (f) =>
    f.has('found') ? `Ready check not passed: ${f.w('found')}` : 'Ready check not passed.',
  'gap-near-crossing': (f) =>
    `Readings are missing for ${f.s('gapS')} near the crossing (${f.w('cause')}); its uncertainty is wider: ± ${f.s('standardUncertaintyS', 2)}.`,
  'off-reference': (f) =>
    `Made under other conditions than the trial: at its reference start and platens the soak time would be ${f.s('shiftS')} ${f.w('way')}, limit ${f.s('limitS')}.`,
  'peak-above-limit': (f) =>
    `The bond line reached ${f.t('peakC')}; the assembly allows ${f.t('limitC')} at the most.`,
  'clock-drift': (f) =>
    f.has('driftPpm')
      ? `The reader's clock and this computer's differ by ${f.w('driftPpm')} parts per million.`
      : "The reader's clock and this computer's differ.",
  'clock-backwards': () =>
    "The file's clock ran backwards between press closed and crossing: nobody knows how long that took.",
  'clock-apart': (f) =>
    `The reader's clock and this computer's run far apart (${f.w('driftPpm')} parts per million): times are the reader's own. Check its clock unless this is a playback.`,
  gap: (f) =>
    `Readings are missing away from the crossing: ${f.w('gaps')} gap${f.w('gaps') === '1' ? '' : 's'}, longest ${f.s('gapS')} (${f.w('cause')}).`,
  'reader-restarted': (f) =>
    `The reader restarted ${f.s('fromS')} after closing; ${f.s('gapS')} without readings.`,
  'hold-dipped': (f) =>
    `The bond line fell below ${f.t('targetC')} for ${f.s('dipS')} during the hold, lowest ${f.t('lowestC')}; the hold ${f.w('dip')}.`,
  'hold-not-verified': (f) =>
    f.w('why') === 'record-ended'
      ? `The record ends after ${f.s('heldS')} of ${f.s('wantedS', 0)} hold: not verified.`
      : f.w('why') === 'gap'
        ? 'Hold not verified: readings are missing inside it.'
        : `Hold not verified: ${f.s('heldS')} of ${f.s('wantedS', 0)} seen.`,
  'recording-not-closed': () => 'The recording has no closing line: it was cut short.',
  'recording-altered': () => 'The recording does not fit its closing line: it was altered.',
  noisy: (f) => `Noisy readings${f.where()}: standard deviation ${f.d('noiseC')}.`,
};

/** One plain sentence for a reason, with its figures; °F first unless °C is chosen, the other at hand. */
export function runReasonText(reason: RunReason, { unit }: { readonly unit: TemperatureUnit }): string {
  return SENTENCES[reason.code](figuresOf(reason, unit));
}

function figuresOf({ facts }: RunReason, unit: TemperatureUnit): Figures {
  const number = (name: string): number | null => {
    const value = facts[name];
    return typeof value === 'number' ? value : null;
  };
  const w = (name: string): string => {
    const value = facts[name];
    if (value === undefined) return '';
    if (typeof value === 'number') return numberText(value, Number.isInteger(value) ? 0 : 1);
    if (name === 'fault') return FAULT_WORDS[value] ?? value;
    if (name === 'cause') return CAUSE_WORDS[value] ?? value;
    if (name === 'by') return SOURCE_WORDS[value] ?? value;
    if (name === 'role') return capital(ROLE_WORDS[value] ?? value);
    return value;
  };
  return {
    t: (name) => (number(name) === null ? '—' : temperatureText(number(name)!, unit)),
    d: (name) => (number(name) === null ? '—' : differenceText(number(name)!, unit)),
    s: (name, decimals = 1) => `${numberText(number(name), decimals)} s`,
    w,
    has: (name) => facts[name] !== undefined,
    where: () => {
      const role = facts.role === undefined ? undefined : ROLE_WORDS[String(facts.role)];
      return facts.channel === undefined
        ? ''
        : ` on channel ${facts.channel}${role === undefined ? '' : ` (${role})`}`;
    },
  };
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
