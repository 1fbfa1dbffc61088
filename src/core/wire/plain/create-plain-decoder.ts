import type { LineDecoder, ReceivedLine, WireEvent, WireTrouble } from '../WireEvent.ts';
import { createPlainSampler, type PlainSampler } from './create-plain-sampler.ts';
import { headingMeaning } from './heading-words.ts';
import { learnPlainLayout, MOST_LEARNT_LINES } from './learn-plain-layout.ts';
import type { PlainValues } from './PlainField.ts';
import type { LearntLine, PlainLayout } from './PlainLayout.ts';
import { plainHeading } from './plain-heading.ts';
import { plainLayoutInWords } from './plain-layout-in-words.ts';
import { plainRefusal } from './plain-refusal.ts';
import { plainValues } from './plain-values.ts';
import { samePlainShape } from './same-plain-shape.ts';
import type { TemperatureUnit } from './temperature-unit.ts';
import { textFromBytes } from './text-from-bytes.ts';

/** No reader prints longer lines of values. */
const LONGEST_LINE = 1000;
const MOST_SHAPES = 16;
const KEPT_REMARKS = 40;
/** So many lines in a row that do not fit, and the layout is learnt anew. */
const MISFITS_TO_RELEARN = 10;
const CONTROL = /[\x00-\x08\x0b-\x1f\x7f-\x9f\ufffd]/;
/** The clock of readers that count micro- or milliseconds in 32 bits; a sequence column is taken to do so too. */
const COUNTER_WRAP = 2 ** 32;

/**
 * Decoder for readers that just print temperatures, with or without heading, labels, units, a clock or
 * a sample count. Learns the layout from the lines themselves (3 to 5 of one shape; these first lines are
 * remarks, no readings), says in `recognised` what it took them for, and never guesses a unit: it comes
 * from the line, the heading or `statedUnit`, else one refusal and no samples. Without a checksum nothing
 * vouches for a line, so only a whole line that fits the layout in columns, labels, units and digits is a
 * reading; everything else is trouble. The same lines give the same events, live or replayed.
 */
export function createPlainDecoder(options: { readonly statedUnit?: TemperatureUnit } = {}): LineDecoder {
  const statedUnit = options.statedUnit ?? null;
  const refused = new Set<string>();
  const boot = new Set<string>();
  const remarks: string[] = [];
  /** Lines being learnt from, by shape: some readers print a line per value, in turn. */
  const learning = new Map<string, LearntLine[]>();
  let others: ReadonlySet<string> = new Set();
  let layout: PlainLayout | null = null;
  let sampler: PlainSampler | null = null;
  let misfits = 0;
  let rebooted = false;

  function remember(text: string): void {
    remarks.push(text);
    if (remarks.length > KEPT_REMARKS) remarks.shift();
    if (!layout && boot.size < KEPT_REMARKS) boot.add(text);
  }

  function learn(line: ReceivedLine, text: string): readonly WireEvent[] {
    const values = plainValues(text);
    if (!values) {
      remember(text);
      return [{ kind: 'remark', text: line.text }];
    }
    const shape = shapeKey(values);
    const lines = learning.get(shape) ?? [];
    lines.push({ arrivedUs: line.arrivedUs, values });
    if (lines.length > MOST_LEARNT_LINES) lines.shift();
    learning.set(shape, lines);
    const [oldest] = learning.keys();
    if (learning.size > MOST_SHAPES && oldest !== undefined) learning.delete(oldest);
    layout = learnPlainLayout(lines, remarks, statedUnit) ?? null;
    if (!layout) return [{ kind: 'remark', text: line.text }];
    others = new Set(
      [...learning].flatMap(([key, seen]) =>
        key !== shape && seen.length > 1 && isLabelled(seen) ? [key] : [],
      ),
    );
    misfits = 0;
    const refusal = plainRefusal(layout, statedUnit);
    if (refusal) {
      sampler = null;
      if (refused.has(refusal.problem)) return [{ kind: 'remark', text: line.text }];
      refused.add(refusal.problem);
      return [refusal];
    }
    sampler = createPlainSampler(layout, lines);
    const sample = sampler.sample(values);
    return [sampler.identity, ...(sample ? [sample] : [])];
  }

  /** A line that a settled layout does not explain: a boot message seen before, or trouble. */
  function misfit(line: ReceivedLine, text: string, settled: PlainLayout): readonly WireEvent[] {
    if (boot.has(text)) {
      const banner = !isHeading(text, settled);
      const restarted: WireEvent[] = banner && !rebooted ? [{ kind: 'started' }] : [];
      rebooted = true;
      return [{ kind: 'remark', text: line.text }, ...restarted];
    }
    misfits += 1;
    if (!plainValues(text)) remember(text);
    if (misfits >= MISFITS_TO_RELEARN) {
      layout = null;
      sampler = null;
      learning.clear();
    }
    return trouble(line, 'garbage');
  }

  function read(line: ReceivedLine, text: string, settled: PlainLayout): readonly WireEvent[] {
    const values = plainValues(text);
    if (values && others.has(shapeKey(values))) return [{ kind: 'remark', text: line.text }];
    if (!values || !samePlainShape(values, settled)) return misfit(line, text, settled);
    if (!sampler) {
      misfits = 0;
      return [{ kind: 'remark', text: line.text }];
    }
    const ranBack = rebooted && sampler.runsBack(values);
    const sample = sampler.sample(values);
    if (!sample) return misfit(line, text, settled);
    misfits = 0;
    rebooted = false;
    return ranBack ? [{ kind: 'started' }, sample] : [sample];
  }

  return {
    decode(line) {
      const text = textFromBytes(line.text).trim();
      if (line.wholeness !== 'whole') {
        if (line.text.length > LONGEST_LINE) return trouble(line, line.wholeness);
        if (text === '') return [{ kind: 'remark', text: line.text }];
        if (line.wholeness === 'start-unknown' && !layout && !plainValues(text)) remember(text);
        return trouble(line, line.wholeness);
      }
      if (text === '') return [{ kind: 'remark', text: line.text }];
      if (text.length > LONGEST_LINE || CONTROL.test(text)) return trouble(line, 'garbage');
      if (/^(?:#|\/\/)/.test(text)) {
        remember(text);
        return [{ kind: 'remark', text: line.text }];
      }
      return layout ? read(line, text, layout) : learn(line, text);
    },
    get recognised() {
      if (!layout) return null;
      return `${plainLayoutInWords(layout)}${others.size > 0 ? ', lines of another kind between them are not used' : ''}`;
    },
    get clockWrapUs() {
      const clock = layout?.columns.find((column) => column.kind === 'clock');
      return clock && clock.tickUs < 1e6 ? COUNTER_WRAP * clock.tickUs : null;
    },
    get sequenceWrap() {
      return layout?.columns.some((column) => column.kind === 'sequence') ? COUNTER_WRAP : null;
    },
  };
}

/** A heading may be printed again every page; only a boot message says that the reader began anew. */
function isHeading(text: string, { separator, columns }: PlainLayout): boolean {
  const { names } = plainHeading([text], separator, columns.length);
  return separator === 'single' ? headingMeaning(text) !== 'unknown' : names.some((name) => name !== null);
}

/** Lines of one shape share this; the decimal sign is not in it, since whole numbers show none. */
function shapeKey(values: PlainValues): string {
  return JSON.stringify([values.separator, values.fields.map((field) => field.label)]);
}

function isLabelled(lines: readonly LearntLine[]): boolean {
  return lines.every((line) => line.values.fields.every((field) => field.label !== null));
}

function trouble(line: ReceivedLine, what: WireTrouble): readonly WireEvent[] {
  return [{ kind: 'trouble', trouble: what, text: line.text }];
}
