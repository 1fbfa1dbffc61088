import type { ReadyCode, ReadyItem, ReadyItemName, ReadyState } from '../ready-check/ReadyCheck.ts';
import type { ChannelFault } from '../wire/WireEvent.ts';
import { waitText } from './cooling-text.ts';
import { CHANNEL_NAME, FAULT_TEXT } from './screen-text.ts';
import {
  differenceText,
  numberText,
  pressureText,
  type TemperatureUnit,
  temperatureField,
  temperatureText,
} from './units-text.ts';

export const READY_TITLE: Readonly<Record<ReadyItemName, string>> = {
  reader: 'Reader',
  probes: 'Probes',
  agreement: 'Probes agree',
  noise: 'Noise',
  platens: 'Platens',
  carrier: 'Carrier',
  gauge: 'Ram gauge',
  placement: 'Probe tip',
  bell: 'Bell',
};

/** One word each, so that no state needs its colour. */
export const READY_STATE_WORD: Readonly<Record<ReadyState, string>> = {
  ready: 'ok',
  wait: 'wait',
  ask: 'LOOK',
  'not-ready': 'NO',
  'not-checked': 'none',
};
export const READY_GONE_ON = 'gone on';

export const READY_PAGE = {
  title: 'Ready check',
  words: { ready: 'READY', look: 'LOOK', wait: 'WAIT', no: 'NOT READY' },
  todo: 'To do:',
  reason: (title: string) => `${title} not in order. Why go on? Type the reason, then Enter.`,
  settled: 'All in order. Enter; then key C at the moment the press closes.',
  nothingToOverride: 'This line is in order.',
  note: (title: string, found: string, why: string) =>
    `Ready check, ${title}: ${found} Gone on because: ${why}`,
  unfinished: (titles: readonly string[]) => `Ready check not finished: ${titles.join(', ')}.`,
  goneOn: (why: string) => `Ready check not passed, gone on because: ${why}`,
  enterHeld: 'One Enter, one confirmation: let go, look, then Enter again.',
  gaugeConfirmed: (psi: number) => `Ready check: ram gauge ${pressureText(psi)} confirmed.`,
} as const;

interface Words {
  readonly found: string;
  /** What to do about it, or the question to answer; empty where nothing. */
  readonly todo: string;
}

/** What an item found, and what to do about it. */
export function readyWords(item: ReadyItem, unit: TemperatureUnit): Words {
  const { facts } = item;
  const number = (name: string): number | null => {
    const value = facts[name];
    return typeof value === 'number' ? value : null;
  };
  return WORDS[item.code]({
    n: (name, decimals = 0) => numberText(number(name), decimals),
    t: (name) => temperatureField(number(name), unit, 0).trim(),
    tt: (name) => temperatureText(number(name) ?? Number.NaN, unit),
    d: (name) => differenceText(Math.abs(number(name) ?? Number.NaN), unit),
    p: (name) => pressureText(number(name) ?? Number.NaN),
    w: (name) => String(facts[name] ?? ''),
    has: (name) => facts[name] !== undefined,
    where: () => {
      const role = String(facts.role ?? '') as keyof typeof CHANNEL_NAME;
      const name = CHANNEL_NAME[role]?.[0] ?? 'channel';
      return facts.channel === undefined ? name : `${name} (channel ${facts.channel})`;
    },
    wait: () => waitText(number('waitS') ?? 0),
    above: () => ((number('differenceC') ?? 0) > 0 ? 'above' : 'below'),
  });
}

interface Figures {
  n(name: string, decimals?: number): string;
  t(name: string): string;
  tt(name: string): string;
  d(name: string): string;
  p(name: string): string;
  w(name: string): string;
  has(name: string): boolean;
  where(): string;
  wait(): string;
  above(): string;
}

const WORDS: Readonly<Record<ReadyCode, (f: Figures) => Words>> = {
  'reader-speaks': (f) => ({
    found: f.has('ratePerS') ? `speaks, ${f.n('ratePerS', 1)} readings/s.` : 'speaks.',
    todo: '',
  }),
  'reader-silent': (f) => ({
    found: f.has('ageS') ? `silent for ${f.n('ageS')} s.` : 'no reading yet.',
    todo: 'See to plug, cable and power of the reader.',
  }),
  'reader-lost': (f) => ({
    found: `lost: ${f.w('cause')}.`,
    todo: 'Plug the reader in again; it comes back by itself.',
  }),
  'reader-refused': (f) => ({
    found: f.w('detail'),
    todo: 'Leave, and start again with the option it names.',
  }),
  'probes-sound': (f) => ({ found: `${f.n('probes')} read plausibly.`, todo: '' }),
  'probes-awaited': () => ({ found: 'no reading yet.', todo: 'Wait for the reader.' }),
  'probe-fault': (f) => ({
    found: `${f.where()}: ${FAULT_TEXT[f.w('fault') as ChannelFault] ?? f.w('fault')}.`,
    todo: 'Push the plug in, look along the wire, change the probe if it stays.',
  }),
  'probe-missing': (f) => ({
    found: `${f.where()}: no value.`,
    todo: 'Check the plug, and which channels the reader sends.',
  }),
  'probe-implausible': (f) => ({
    found: `${f.where()} reads ${f.tt('temperatureC')}.`,
    todo: 'Check plug polarity, thermocouple type and where the probe lies.',
  }),
  'probes-agree': (f) => ({ found: `at rest within ${f.d('differenceC')}.`, todo: '' }),
  'probes-apart': (f) => ({
    found: `channels ${f.w('hotter')} and ${f.w('colder')} differ by ${f.d('differenceC')} at rest, limit ${f.d('limitC')}.`,
    todo: 'Check plugs and extension leads for reversed wires; let the part come to rest.',
  }),
  'probes-moving': () => ({
    found: 'the bond line is not at rest.',
    todo: 'Wait until the part stops warming or cooling.',
  }),
  'one-probe': () => ({ found: 'one probe only: nothing to compare it with.', todo: '' }),
  'noise-low': (f) => ({ found: `scatter ${f.d('noiseC')} at most.`, todo: '' }),
  'noise-high': (f) => ({
    found: `${f.where()} scatters by ${f.d('noiseC')}, limit ${f.d('limitC')}.`,
    todo: 'Lead away from heater cables, tighten the plug, check the grounding.',
  }),
  'noise-awaited': () => ({ found: 'too few readings yet.', todo: 'Wait some seconds.' }),
  'platens-steady': (f) => ({
    found: f.has('differenceC')
      ? `steady, within ${f.d('differenceC')} of the set point.`
      : 'steady; no set point stated.',
    todo: '',
  }),
  'platen-off': (f) => ({
    found: `${f.where()} ${f.t('temperatureC')}, ${f.d('differenceC')} ${f.above()} set point.`,
    todo: 'Wait until it has recovered, or correct the set point.',
  }),
  'platen-moving': (f) => ({
    found: `${f.where()} moved by ${f.d('driftC')} in ${f.n('overS')} s.`,
    todo: 'Wait until it stands still.',
  }),
  'platens-awaited': () => ({ found: 'too few readings yet.', todo: 'Wait some seconds.' }),
  'platens-not-measured': () => ({ found: 'not measured: read both controllers.', todo: '' }),
  'carrier-cool': (f) => ({ found: `cool, ${f.t('temperatureC')}.`, todo: '' }),
  'carrier-warm': (f) => ({
    found: `warm, ${f.t('temperatureC')}${f.has('waitS') ? `, wait about ${f.wait()}` : ''}.`,
    todo: `Let it cool below ${f.tt('limitC')}, or lay a cool one.`,
  }),
  'carrier-awaited': () => ({ found: 'no reading yet.', todo: 'Wait for the reader.' }),
  gauge: (f) => ({
    found: `${f.p('gaugePsi')}, from ${f.n('lowPsi')} to ${f.n('highPsi')} psi.`,
    todo: `Read the gauge. Net facing pressure then is ${f.p('netFacingPsi')}. Set so? Enter.`,
  }),
  'gauge-unknown': () => ({
    found: 'sizes of ram or ring not known.',
    todo: "Read the gauge against the job's own card. Set so? Enter.",
  }),
  placement: () => ({
    found: 'mid-width of the ring, wires taped, tip not covered.',
    todo: 'So laid, long tools used, hands clear of the ram, ventilation on? Enter.',
  }),
  bell: () => ({
    found: 'rings at crossing and hold done.',
    todo: 'It rings now; B rings again. Heard? Enter.',
  }),
};
