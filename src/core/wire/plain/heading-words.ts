import { LONGEST_HEADING } from './temperature-unit.ts';

const UNIT_TAIL =
  /[\s_]*[[({<]?\s*(?:s|sec|secs|seconds?|ms|msec|millis|milliseconds?|us|µs|μs|micros|microseconds?|min|mins|minutes?|h|hrs?|hours?)\s*[\])}>]?$/i;
const TIME =
  /^(?:t|time|times|elapsed|elapsed[ _]?time|run[ _]?time|uptime|timestamp|time[ _]?stamp|test[ _]?time|rel(?:ative)?[ _]?time|date[ _/&]*time|datetime|clock|millis|milliseconds?|ms|micros|microseconds?|us|µs|seconds?|secs?|s|minutes?|mins?|epoch|unix[ _]?time|zeit|temps|tiempo|tempo|tid|uhrzeit|heure|hora|ora)$/i;
const DATE = /^(?:date|datum|fecha|data|day)$/i;
const SEQUENCE =
  /^(?:n|no\.?|nr\.?|num|number|#|seq|sequence|sample|sample[ _]?(?:no\.?|number)|samples|count|counter|index|idx|i|line|row|record|rec|id|scan|point)$/i;
const TEMPERATURE =
  /temp|therm|bond|platen|probe|junction|sensor|°|^tc|^t[ _]?\d+|^t[ _](?!stamp)|ambient|carrier|^ch(?:annel)?[ _]?\d+|^ai[ _]?\d+|℃|℉/i;
const OTHER =
  /hum|\brh\b|%|press(?!\b.*temp)|volt|curr|amp|set[ _]?point|\bsp\b|output|pwm|duty|power|watt|status|state|alarm|flag|adc|raw|\b[mu]v\b|flow|flux|mass|weight|speed|rpm|heater|^q\d*$|resist|ohm|battery|\bbat\b|co2|lux|light|force|strain|position|valve|rate|density|loss|error|note|comment|event|operator/i;
const BOND_LINE = /bond[ _-]*line|bond|glue[ _-]*line/i;

function bare(heading: string): string {
  return heading
    .replace(/[[({<][^\])}>]*[\])}>]/g, ' ')
    .replace(/["']/g, '')
    .trim()
    .replace(/[:,;]+$/, '')
    .trim();
}

/** What a heading or label says its column holds, by its words alone. `t` is time, `T` a temperature. */
export function headingMeaning(
  heading: string,
): 'time' | 'date' | 'sequence' | 'temperature' | 'other' | 'unknown' {
  if (heading.length > LONGEST_HEADING) return 'unknown';
  const name = bare(heading);
  if (name === 'T') return 'temperature';
  if (TIME.test(name)) return 'time';
  if (DATE.test(name)) return 'date';
  if (SEQUENCE.test(name)) return 'sequence';
  const stem = name.replace(UNIT_TAIL, '').replace(/[,;:_]+$/, '');
  if (stem !== '' && stem !== 'T' && TIME.test(stem)) return 'time';
  if (/^(?:T)[ _]/.test(name) && UNIT_TAIL.test(name)) return 'temperature';
  if (TEMPERATURE.test(heading) && !/set[ _]?point|status|alarm|flag|error|raw/i.test(heading))
    return 'temperature';
  return OTHER.test(heading) ? 'other' : 'unknown';
}

/** Whether a heading names the bond line. */
export function namesBondLine(heading: string): boolean {
  return BOND_LINE.test(heading);
}

const TICKS: readonly (readonly [RegExp, number])[] = [
  [/^(?:us|usec|µs|μs|micros|microseconds?)$/i, 1],
  [/^(?:ms|msec|msecs|millis|milliseconds?)$/i, 1e3],
  [/^(?:s|sec|secs|seconds?)$/i, 1e6],
  [/^(?:min|mins|minutes?)$/i, 60e6],
  [/^(?:h|hr|hrs|hours?)$/i, 3600e6],
];

/** Microseconds per unit of a time heading: `Time (ms)`, `time_s`, `millis`, `[s]`. Undefined where it names no unit. */
export function tickUsInHeading(heading: string): number | undefined {
  if (heading.length > LONGEST_HEADING) return undefined;
  const words = heading
    .replace(/[[\](){}<>,;:/_"']+/g, ' ')
    .trim()
    .split(/\s+/)
    .reverse();
  for (const word of words) {
    const found = TICKS.find(([pattern]) => pattern.test(word));
    if (found) return found[1];
  }
  return undefined;
}
