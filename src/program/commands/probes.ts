import { checkProbe } from '../../core/probe/check-probe.ts';
import type { Probe } from '../../core/probe/Probe.ts';
import { probeErrorAt } from '../../core/probe/probe-error-at.ts';
import { probeUncertaintyC } from '../../core/probe/probe-uncertainty-c.ts';
import type { Store } from '../../core/store/Store.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { probeLines } from '../../core/text/probe-text.ts';
import { PA_PER_PSI } from '../../core/units/exact-factors.ts';
import { parsePressure } from '../../core/units/parse-pressure.ts';
import { parseTemperature } from '../../core/units/parse-temperature.ts';
import type { ThermocoupleType } from '../../core/wire/WireEvent.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseDay, parsePoint } from '../options/parse-point.ts';
import { parseToleranceClass } from '../options/parse-tolerance-class.ts';
import { readFromStore, type StoreOptions, withStore } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';
import { named } from './named.ts';

interface ProbeOptions extends StoreOptions {
  readonly type?: ThermocoupleType;
  readonly class?: string;
  readonly point?: readonly string[];
  /** False with `--no-points`. */
  readonly points: boolean;
  readonly uncertainty: string;
  readonly airPressure?: string;
  readonly calibrated?: string;
  readonly reader?: 'included' | 'not-included';
  readonly head?: string;
  readonly readerAt?: string;
  readonly target: string;
  readonly history?: boolean;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

/** `probes`: lists the probes. `probes NAME --type K …`: adds one, or a version of one; earlier versions stay. */
export async function probes(name: string | undefined, options: ProbeOptions): Promise<void> {
  const targetC = parseTemperature(options.target, '--target');
  const open = name === undefined || !changes(options) ? readFromStore : withStore;
  await open(options, (store) => {
    if (name !== undefined && changes(options))
      store.saveProbe(changed(store, name, options), new Date().toISOString());
    const shown = name === undefined ? store.probes() : [named(store.probes(), name, 'probe')];
    const history =
      options.history === true && shown[0] !== undefined ? store.probeHistory(shown[0].name) : [];
    if (options.json) return printJson({ probes: shown.map((probe) => json(probe, targetC)), history });
    if (shown.length === 0) return print(COMMAND_TEXT.none.probe);
    print(
      [
        ...shown.flatMap((probe) => probeLines(probe, targetC, options.show)),
        ...history
          .slice(1)
          .flatMap(({ savedAt, probe }) => [
            '',
            COMMAND_TEXT.probeBefore(savedAt),
            ...probeLines(probe, targetC, options.show),
          ]),
      ].join('\n'),
    );
  });
}

function changes(options: ProbeOptions): boolean {
  return (
    !options.points ||
    [options.type, options.class, options.point, options.reader, options.head, options.readerAt].some(
      (one) => one !== undefined,
    )
  );
}

function changed(store: Store, name: string, options: ProbeOptions): Probe {
  const before = store.probes().find((probe) => probe.name === name);
  const type = options.type ?? before?.thermocoupleType;
  if (type === undefined) {
    throw new OptionError(
      `probe "${name}" is new, and its type is not given`,
      'Give it: --type K',
      'probe-type-missing',
    );
  }
  return checkProbe({
    name,
    thermocoupleType: type,
    toleranceClass:
      options.class === undefined
        ? (before?.toleranceClass ?? null)
        : parseToleranceClass(options.class, '--class'),
    points: options.points ? (points(options) ?? before?.points ?? []) : [],
    readerIncluded:
      options.reader === undefined ? (before?.readerIncluded ?? false) : options.reader === 'included',
    headC: options.head === undefined ? (before?.headC ?? null) : parseTemperature(options.head, '--head'),
    readerC:
      options.readerAt === undefined
        ? (before?.readerC ?? null)
        : parseTemperature(options.readerAt, '--reader-at'),
  });
}

function points(options: ProbeOptions): Probe['points'] | undefined {
  const { uncertainty } = options;
  if (uncertainty !== 'expanded' && uncertainty !== 'standard')
    throw new OptionError(
      `--uncertainty: expected expanded or standard, came "${uncertainty}"`,
      'See the certificate',
    );
  const airPressureKpa =
    options.airPressure === undefined
      ? null
      : (parsePressure(options.airPressure, '--air-pressure') * PA_PER_PSI) / 1000;
  const calibratedOn = options.calibrated === undefined ? null : parseDay(options.calibrated, '--calibrated');
  return options.point?.map((text) =>
    parsePoint(text, { uncertaintyIs: uncertainty, airPressureKpa, calibratedOn }),
  );
}

function json(probe: Probe, targetC: number): Record<string, unknown> {
  const found = probeUncertaintyC(probe, targetC);
  return {
    ...probe,
    atTarget: {
      targetC,
      correctionC: -(probeErrorAt(probe, targetC)?.errorC ?? 0),
      standardUncertaintyC: found.standardUncertaintyC,
      limitC: found.limitC,
      from: found.from,
      nearestPointC: found.distanceC,
    },
  };
}
