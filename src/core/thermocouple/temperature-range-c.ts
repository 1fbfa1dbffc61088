import type { ThermocoupleType } from '../wire/WireEvent.ts';
import { ITS90_TABLE } from './its90-table.ts';

export interface Range {
  readonly lowest: number;
  readonly highest: number;
}

const RANGES = new Map<ThermocoupleType, Range>();
for (const [type, functions] of Object.entries(ITS90_TABLE)) {
  const range = { lowest: functions.forward[0]!.fromC, highest: functions.forward.at(-1)!.toC };
  RANGES.set(type as ThermocoupleType, Object.freeze(range));
}

/** Range in °C of a thermocouple type's reference function (NIST SRD 60). */
export function temperatureRangeC(type: ThermocoupleType): Range {
  return RANGES.get(type) as Range;
}
