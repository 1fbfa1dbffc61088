import type { Assembly } from '../../core/press/Press.ts';
import type { Store } from '../../core/store/Store.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { assemblyLine } from '../../core/text/store-lists-text.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { parseLength } from '../../core/units/parse-length.ts';
import { parsePressureBand } from '../../core/units/parse-pressure-band.ts';
import { parseTemperature } from '../../core/units/parse-temperature.ts';
import { type CureOptions, cureOptions } from '../options/cure-options.ts';
import { runRules } from '../options/run-rules.ts';
import { readFromStore, type StoreOptions, withStore } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';

interface AssemblyOptions extends StoreOptions, CureOptions {
  readonly ringOd?: string;
  readonly ringId?: string;
  readonly carrier?: string;
  readonly target?: string;
  readonly hold?: string;
  readonly net?: string;
  readonly adhesive?: string;
  readonly dataSheet?: string;
  readonly highestDwell?: string;
  readonly highestPeak?: string;
  readonly recovery?: string;
  readonly show?: 'F' | 'C';
  readonly json?: boolean;
}

/** An assembly of which only the name is known: target and hold are the trade's defaults. */
export function newAssembly(name: string): Assembly {
  const { targetC, holdS } = runRules({});
  return {
    name,
    ringOuterDiameterMm: null,
    ringInnerDiameterMm: null,
    carrier: null,
    targetC,
    holdS,
    adhesive: null,
    dataSheetRevision: null,
    highestDwellS: null,
    highestPeakC: null,
    leastRecoveryS: null,
  };
}

/** `assemblies`: lists the assemblies. `assemblies NAME --ring-od …`: adds or changes one. */
export async function assemblies(name: string | undefined, options: AssemblyOptions): Promise<void> {
  const open = name === undefined ? readFromStore : withStore;
  await open(options, (store) => {
    if (name !== undefined) store.saveAssembly(changed(store, name, options));
    const all = store.assemblies();
    const shown = name === undefined ? all : all.filter((assembly) => assembly.name === name);
    if (options.json) return printJson({ assemblies: shown });
    print(
      shown.length === 0
        ? COMMAND_TEXT.none.assembly
        : shown.map((assembly) => assemblyLine(assembly, options.show ?? 'F')).join('\n'),
    );
  });
}

function changed(store: Store, name: string, options: AssemblyOptions): Assembly {
  const cure = cureOptions(options);
  const before = store.assemblies().find((assembly) => assembly.name === name) ?? newAssembly(name);
  return {
    ...before,
    ...(cure === undefined ? {} : { cure }),
    ...(options.ringOd === undefined
      ? {}
      : { ringOuterDiameterMm: parseLength(options.ringOd, '--ring-od') }),
    ...(options.ringId === undefined
      ? {}
      : { ringInnerDiameterMm: parseLength(options.ringId, '--ring-id') }),
    ...(options.carrier === undefined ? {} : { carrier: options.carrier }),
    ...(options.target === undefined ? {} : { targetC: parseTemperature(options.target, '--target') }),
    ...(options.hold === undefined ? {} : { holdS: parseDuration(options.hold, '--hold') }),
    ...(options.net === undefined ? {} : { netFacingPsi: parsePressureBand(options.net, '--net') }),
    ...(options.adhesive === undefined ? {} : { adhesive: options.adhesive }),
    ...(options.dataSheet === undefined ? {} : { dataSheetRevision: options.dataSheet }),
    ...(options.highestDwell === undefined
      ? {}
      : { highestDwellS: parseDuration(options.highestDwell, '--highest-dwell') }),
    ...(options.highestPeak === undefined
      ? {}
      : { highestPeakC: parseTemperature(options.highestPeak, '--highest-peak') }),
    ...(options.recovery === undefined
      ? {}
      : { leastRecoveryS: parseDuration(options.recovery, '--recovery') }),
  };
}
