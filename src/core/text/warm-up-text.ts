import type { Heating } from '../warm-up/find-heatings.ts';
import type { ReadyState } from '../warm-up/ReadyWatch.ts';
import type { ChannelWarmUp, WarmUp, WarmUpCaution } from '../warm-up/WarmUp.ts';
import { type FigureKind, WARM_UP_FIGURES } from '../warm-up/warm-up-figures.ts';
import {
  differenceText,
  numberText,
  secondsText,
  slopeText,
  type TemperatureUnit,
  temperatureText,
} from './units-text.ts';

const ABSENT = '—';

/** Short name of each figure, as tables show it. */
export const FIGURE_NAMES: Readonly<Record<string, string>> = {
  startC: 'start',
  largestRateCPerS: 'largest rate',
  delayS: 'delay',
  timeConstantS: 'time constant',
  riseTimeS: 'rise time',
  reachesBandS: 'reaches band',
  staysInBandS: 'stays in band',
  readyAtS: 'READY',
  settlingTimeS: 'settling time',
  overshootC: 'overshoot',
  overshootPercent: 'overshoot, share',
  levelC: 'steady level',
  meanOffsetC: 'mean offset',
  driftCPerHour: 'drift',
  rippleAmplitudeC: 'ripple, ±',
  ripplePeriodS: 'ripple period',
  dipC: 'dip, cold part',
  dipLowestAfterS: 'lowest after',
  recoveryTimeS: 'recovery time',
};

/** What each figure means; the one place where it is written down. Printed by `warm-up --explain`. */
export const WARM_UP_DEFINITIONS: readonly (readonly [string, string])[] = [
  [
    'time zero',
    'power-on: as stated, else a note "heaters on" in the recording, else where the fitted rise of the earliest platen leaves its start temperature.',
  ],
  [
    'smoothing',
    'levels and times are read off a parabola fitted to ± 8 s of readings (two readings a side of a slow logger); spikes of more than 3 °C, and 1 °C for each second between readings, are left out.',
  ],
  [
    'heating',
    'from a low to where the platens begin to cool, or to the end: a rise by more than 50 °C (90 °F), ended by a fall of more than 50 °C, seen in the middle of all platens (judgement, no source). Each heating of a recording is analysed by itself; --heating picks one.',
  ],
  ['start', 'mean temperature before the rise.'],
  ['largest rate', 'steepest slope of a straight line through any 30 s of readings.'],
  [
    'time constant, delay',
    'τ and d of T = end + (start − end)·exp(−(t − d)/τ), fitted by least squares to the full-power stretch only: the widest stretch that one such curve describes. ± is the standard uncertainty of the fit, correlation of neighbouring readings included. τ is the time constant of a first-order lag element (IEC 60050-351:2013, 351-50-02); d takes the place of the dead time of 351-50-31 and holds dead time and small lags together and is told only where power-on is known.',
  ],
  [
    'rise time',
    '10 % to 90 % of the way from start to steady level (IEC 60050-351 and IEEE 181, from memory).',
  ],
  [
    'reaches band',
    'first time inside set point ± band (as the step response time of IEC 60050-351:2013, 351-45-36, with set point ± band in place of a percentage).',
  ],
  ['stays in band', 'inside set point ± band and not outside again before a cold part goes in.'],
  [
    'settling time',
    'inside the own steady level ± band and not outside again before a cold part goes in (settling time of a step response, IEC 60050-351, from memory; the level counts, not the set point).',
  ],
  [
    'overshoot',
    'highest smoothed temperature above the steady level, also as share of the way from start to level (IEC 60050-351, from memory); 0 where it does not stand out of ripple and noise or lies in the steady stretch itself.',
  ],
  [
    'steady level',
    'mean over the steady stretch: the latter half of the time between settling and the first cold part (or the end).',
  ],
  ['mean offset', 'steady level less set point.'],
  ['drift', 'slope of the steady stretch per hour, from twelve block means; ± is its standard uncertainty.'],
  [
    'ripple',
    'half the peak-to-peak height, and period, of the swing that explains most of the steady stretch; none where no swing stands out of the noise (chance under 0.1 %).',
  ],
  [
    'dip, recovery',
    'a fall of more than 2 °F below the level (more where the ripple is larger) after 5 quiet minutes; recovered when no lower than that for 60 s. Time counts from press closed where contact or key told it, else from where the trace begins to fall.',
  ],
  [
    'READY',
    'every platen inside set point ± band for the stated time without a break; one odd reading breaks nothing, 10 s without readings does. Band ± 5 °F for 5 min unless stated (common practice, no source).',
  ],
];

const CAUTION_TEXTS: Readonly<Record<WarmUpCaution, string>> = {
  'began-hot':
    'The platens were not cold at the start: rise, time constant and delay do not compare with a cold start.',
  'heating-had-begun':
    'Heating was under way at the first reading: times count from the first reading or later, not from power-on.',
  'power-on-from-rise':
    'Power-on is not in the recording: times count from the rise, and no delay is told. Note "heaters on" when you switch on, or give --powered-at.',
  'not-settled':
    'A platen did not settle before the recording ended or a cold part went in: level, offset, ripple and drift are not told.',
  'still-drifting':
    'A platen was still drifting: level, settling and overshoot are those of the recording so far. Record longer.',
  'full-power-rough':
    'The rise bends from one first-order curve by up to 1 %: time constant and delay are rough, more than their ± tells.',
  'no-full-power-stretch':
    'No stretch of the rise follows one first-order curve: time constant and delay are not told.',
  gaps: 'Readings are missing in places; times near a gap are as rough as the gap is long.',
  'no-set-point': 'No set point is known: give --platens to get times to the band, offset and READY.',
};

/** Minutes and seconds in a sentence: "21 min 5 s", "42.3 s". */
export function timeText(seconds: number): string {
  if (!Number.isFinite(seconds)) return ABSENT;
  if (Math.abs(seconds) < 120) return secondsText(seconds);
  const whole = Math.round(Math.abs(seconds));
  return `${seconds < 0 ? '−' : ''}${Math.floor(whole / 60)} min ${whole % 60} s`;
}

/** A figure in words with its unit; a dash where absent. */
export function figureText(value: number | null, kind: FigureKind, unit: TemperatureUnit): string {
  if (value === null) return ABSENT;
  switch (kind) {
    case 'time':
      return timeText(value);
    case 'temperature':
      return temperatureText(value, unit);
    case 'difference':
      return differenceText(value, unit);
    case 'rate':
      return slopeText(value, unit);
    case 'drift':
      return driftText(value, unit);
    case 'percent':
      return `${numberText(value, 1)} %`;
  }
}

/** Standard uncertainty behind a time or a drift: "± 0.3 s". */
export function uncertaintyText(value: number, kind: FigureKind, unit: TemperatureUnit): string {
  if (kind === 'drift') return `± ${numberText(unit === 'F' ? value * 1.8 : value, 2)} °${unit}/h`;
  return `± ${secondsText(value, value < 1 ? 2 : value < 10 ? 1 : 0)}`;
}

/** One warm-up: conditions, a table with a column a platen, upper against lower, cautions. */
export function warmUpLines(warmUp: WarmUp, unit: TemperatureUnit): readonly string[] {
  const { rules, difference } = warmUp;
  const table = WARM_UP_FIGURES.map(({ key, kind, value, standardUncertainty }) => [
    FIGURE_NAMES[key] ?? key,
    ...warmUp.channels.map((channel) => {
      const spread = standardUncertainty?.(channel) ?? null;
      const text = figureText(value(channel), kind, unit);
      return spread === null ? text : `${text} ${uncertaintyText(spread, kind, unit)}`;
    }),
  ]);
  return [
    `Times from power-on (${{ stated: 'as stated', note: 'noted in the recording', rise: 'from the rise' }[warmUp.powerOn.by]}); recorded for ${timeText(warmUp.endedS)}.`,
    rules.setPointC === null
      ? 'Set point: not known.'
      : `Set point: upper ${temperatureText(rules.setPointC.upper, unit)}, lower ${temperatureText(rules.setPointC.lower, unit)}; band ± ${differenceText(rules.ready.bandC, unit)}.`,
    '',
    ...tableLines([['', ...warmUp.channels.map((channel) => channel.label)], ...table]),
    '',
    ...(difference === null
      ? []
      : [
          `Upper less lower: ${difference.steadyC === null ? 'not told, not both settled' : `${differenceText(difference.steadyC, unit)} when steady`}; largest while heating ${differenceText(difference.largestWhileHeatingC, unit)} at ${timeText(difference.largestAtS)}.`,
        ]),
    ...laterRecoveries(warmUp.channels, unit),
    readyText(warmUp, unit),
    ...cautionTexts(warmUp.cautions),
  ];
}

function readyText({ readyAtS, rules, channels }: WarmUp, unit: TemperatureUnit): string {
  if (rules.setPointC === null) return 'READY: not judged without a set point.';
  const rule = `inside ± ${differenceText(rules.ready.bandC, unit)} for ${timeText(rules.ready.forS)}`;
  if (readyAtS !== null) return `READY after ${timeText(readyAtS)}: every platen ${rule}.`;
  const late = channels.filter((one) => one.readyAtS === null).map((one) => one.label);
  return late.length === 0
    ? `Not READY in this recording: the platens were never ${rule} at the same time.`
    : `Not READY in this recording: ${late.join(' and ')} never ${rule}.`;
}

function laterRecoveries(channels: readonly ChannelWarmUp[], unit: TemperatureUnit): readonly string[] {
  return channels.flatMap((channel) =>
    channel.recoveries
      .slice(1)
      .map(
        (one) =>
          `${channel.label}: another dip at ${timeText(one.partInS)}, ${differenceText(one.depthC, unit)} deep, ${one.recoveryTimeS === null ? 'not recovered' : `recovered after ${timeText(one.recoveryTimeS)}`}.`,
      ),
  );
}

export function cautionTexts(cautions: readonly WarmUpCaution[]): readonly string[] {
  return cautions.map((caution) => `Note: ${CAUTION_TEXTS[caution]}`);
}

/** Which stretch of its recording a heating is; nothing where it is all of it. */
export function heatingLines({ number, of, record, coolsFromS }: Heating): readonly string[] {
  const beganS = Math.min(...record.channels.map(({ timesS }) => timesS[0] ?? 0));
  const cools =
    coolsFromS === null ? '' : ` The platens cool from ${timeText(coolsFromS)} on; that is left out.`;
  if (of > 1) return [`Heating ${number} of ${of}: begins ${timeText(beganS)} into the recording.${cools}`];
  return coolsFromS === null ? [] : [cools.trim()];
}

/** The definitions, one a paragraph. */
export function definitionLines(): readonly string[] {
  return WARM_UP_DEFINITIONS.map(([name, text]) => `${name}: ${text}`);
}

/** Columns of texts, each as wide as its longest, parted by three spaces. */
export function tableLines(rows: readonly (readonly string[])[]): readonly string[] {
  const widths: number[] = [];
  for (const row of rows)
    row.forEach((cell, column) => {
      widths[column] = Math.max(widths[column] ?? 0, cell.length);
    });
  return rows.map((row) =>
    row
      .map((cell, column) => (column === 0 ? cell.padEnd(widths[0]!) : cell.padStart(widths[column]!)))
      .join('   ')
      .trimEnd(),
  );
}

function driftText(driftCPerHour: number, unit: TemperatureUnit): string {
  const fahrenheit = `${numberText(driftCPerHour * 1.8, 2)} °F/h`;
  const celsius = `${numberText(driftCPerHour, 2)} °C/h`;
  return unit === 'F' ? `${fahrenheit} (${celsius})` : `${celsius} (${fahrenheit})`;
}

/** The live READY watch in one or two sentences: what is, and how long to go. */
export function readyStateLines(state: ReadyState, forS: number, unit: TemperatureUnit): readonly string[] {
  if (state.ready) return [`READY: every platen inside its band for ${timeText(state.insideForS)}.`];
  const silent = state.platens.filter((one) => one.temperatureC === null).map((one) => one.label);
  if (silent.length > 0) return [`Not READY: no reading from ${silent.join(' and ')}.`];
  const outside = state.platens.filter((one) => !one.inside);
  const where = outside.map((one) => {
    const awayC = one.temperatureC! - one.setPointC;
    return `${one.label} ${differenceText(Math.abs(awayC), unit)} ${awayC < 0 ? 'below' : 'above'} set point`;
  });
  const now =
    outside.length === 0
      ? `Inside the band for ${timeText(state.insideForS)} of ${timeText(forS)}.`
      : `Not READY: ${where.join(', ')}.`;
  return [now, estimateText(state)];
}

export function estimateText({ estimate, platens }: ReadyState): string {
  if (estimate === null) {
    return platens.some((one) => one.inside)
      ? 'Time to READY: not told; a platen comes no nearer to its set point.'
      : 'Time to READY: not told yet.';
  }
  const { earliestInS, likelyInS, latestInS } = estimate;
  if (latestInS - earliestInS < 30) return `READY in about ${roundText(likelyInS)}.`;
  return `READY in about ${roundText(likelyInS)} (${roundText(earliestInS)} to ${roundText(latestInS)}).`;
}

/** No finer than an estimate can be: 10 s below five minutes, else whole minutes. */
function roundText(seconds: number): string {
  return seconds < 300 ? timeText(Math.ceil(seconds / 10) * 10) : `${Math.round(seconds / 60)} min`;
}
