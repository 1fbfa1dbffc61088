import type { Assembly, Press } from '../../core/press/Press.ts';
import type { Store } from '../../core/store/Store.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { parseTemperature } from '../../core/units/parse-temperature.ts';
import { OptionError } from '../options/OptionError.ts';
import { newAssembly } from './assemblies.ts';
import { newPress } from './presses.ts';

const PLATENS_C = parseTemperature('450F', 'demo');

/** The demo's press, invented: a 200 mm air ram, platens at 450 °F. */
export const DEMO_PRESS: Press = {
  ...newPress('North'),
  ramBoreMm: 200,
  gaugeDivisionPsi: 2,
  platenSetPointC: { upper: PLATENS_C, lower: PLATENS_C },
};

/** The demo's assembly, invented: a brake plate of a deck winch. */
export const DEMO_ASSEMBLY: Assembly = {
  ...newAssembly('WB-212'),
  ringOuterDiameterMm: 212,
  ringInnerDiameterMm: 168,
  carrier: COMMAND_TEXT.demoCarrier,
};

/**
 * Sees that the store has the demo's press and assembly. Refuses where a press or assembly of that name is another one: a
 * shop's own bore or hold is never overwritten.
 */
export function demoShopIn(store: Store): void {
  const press = store.presses().find(({ name }) => name === DEMO_PRESS.name);
  const assembly = store.assemblies().find(({ name }) => name === DEMO_ASSEMBLY.name);
  if (press !== undefined && differs(press, DEMO_PRESS)) refuse('press', press.name, store.path);
  if (assembly !== undefined && differs(assembly, DEMO_ASSEMBLY))
    refuse('assembly', assembly.name, store.path);
  if (press === undefined) store.savePress(DEMO_PRESS);
  if (assembly === undefined) store.saveAssembly(DEMO_ASSEMBLY);
}

function differs(own: object, demo: object): boolean {
  const fields = { ...own, ...demo };
  return Object.keys(fields).some(
    (key) =>
      JSON.stringify(own[key as keyof typeof own] ?? null) !==
      JSON.stringify(demo[key as keyof typeof demo] ?? null),
  );
}

function refuse(what: 'press' | 'assembly', name: string, path: string): never {
  throw new OptionError(
    `demo: ${what} "${name}" in ${path} differs from the demo's, and is not overwritten`,
    'Leave --store out: the demo keeps a store of its own; or name a new file',
    'demo-would-overwrite',
  );
}
