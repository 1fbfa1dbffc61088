import { middleOfBand, type NetFacingBand, netFacingBand } from '../../core/press/net-facing-band.ts';
import type { Assembly, Press } from '../../core/press/Press.ts';
import { pressure as workOut } from '../../core/press/pressure.ts';
import { ASKED } from '../../core/text/home-text.ts';
import { pressureLines } from '../../core/text/pressure-text.ts';
import { parseLength } from '../../core/units/parse-length.ts';
import { parsePressure } from '../../core/units/parse-pressure.ts';
import { parsePressureBand } from '../../core/units/parse-pressure-band.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';
import { parseFraction } from '../options/parse-fraction.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';
import { named } from './named.ts';

interface PressureOptions extends StoreOptions {
  readonly ringOd?: string;
  readonly ringId?: string;
  readonly bore?: string;
  readonly rod?: string;
  readonly rams?: string;
  readonly gauge?: string;
  readonly net?: string;
  readonly division?: string;
  readonly band?: string;
  readonly land?: string;
  readonly efficiency?: string;
  readonly assembly?: string;
  readonly press?: string;
  readonly json?: boolean;
}

/** `pressure`: gauge for a wanted net facing pressure, or net facing pressure from the gauge. */
export async function pressure(options: PressureOptions): Promise<void> {
  const stored = await storedSizes(options);
  const length = (text: string | undefined, option: string): number | null =>
    text === undefined ? null : parseLength(text, option);
  const division =
    options.division === undefined
      ? (stored.press?.gaugeDivisionPsi ?? null)
      : parsePressure(options.division, '--division');
  const bandPsi =
    options.band === undefined
      ? netFacingBand(stored.assembly ?? null)
      : parsePressureBand(options.band, '--band');
  const result = workOut({
    ringOuterDiameterMm: needed(
      length(options.ringOd, '--ring-od') ?? stored.assembly?.ringOuterDiameterMm,
      '--ring-od',
      ASKED.outer,
    ),
    ringInnerDiameterMm: needed(
      length(options.ringId, '--ring-id') ?? stored.assembly?.ringInnerDiameterMm,
      '--ring-id',
      ASKED.inner,
    ),
    ramBoreMm: needed(length(options.bore, '--bore') ?? stored.press?.ramBoreMm, '--bore', ASKED.bore),
    ramRodMm: length(options.rod, '--rod') ?? stored.press?.ramRodMm ?? null,
    ramPulls: options.rod !== undefined || (stored.press?.ramRodMm ?? null) !== null,
    rams:
      options.rams === undefined
        ? (stored.press?.rams ?? 1)
        : parseCount(options.rams, '--rams', { least: 1, most: 20 }),
    gaugeDivisionPsi: division,
    bandPsi,
    ...(options.land === undefined ? {} : { landFraction: parseFraction(options.land, '--land') }),
    ...(options.efficiency === undefined
      ? {}
      : { efficiency: parseFraction(options.efficiency, '--efficiency') }),
    given: givenPressure(options, bandPsi),
  });
  if (options.json) printJson(result);
  else
    print(
      pressureLines(result, {
        bandIsDefault: options.band === undefined && stored.assembly?.netFacingPsi == null,
        wanted: options.gauge === undefined,
      }).join('\n'),
    );
}

async function storedSizes(options: PressureOptions): Promise<{ press?: Press; assembly?: Assembly }> {
  if (options.press === undefined && options.assembly === undefined) return {};
  return readFromStore(options, (store) => ({
    ...(options.press === undefined ? {} : { press: named(store.presses(), options.press, 'press') }),
    ...(options.assembly === undefined
      ? {}
      : { assembly: named(store.assemblies(), options.assembly, 'assembly') }),
  }));
}

function needed(value: number | null | undefined, option: string, what: string): number {
  if (value !== null && value !== undefined) return value;
  throw new OptionError(
    `pressure: the ${what} is not known`,
    `Give it with its unit, for example ${option} ${option === '--bore' ? '200mm' : '212mm'}, or name a press and an assembly of the store`,
    'size-missing',
  );
}

function givenPressure(
  { gauge, net }: PressureOptions,
  bandPsi: NetFacingBand,
): { readonly gaugePsi: number } | { readonly netFacingPsi: number } {
  if (gauge !== undefined && net !== undefined)
    throw new OptionError(
      'pressure: came both --gauge and --net',
      'Give the one that is known; the other is worked out',
    );
  if (gauge !== undefined) return { gaugePsi: parsePressure(gauge, '--gauge') };
  if (net !== undefined) return { netFacingPsi: parsePressure(net, '--net') };
  // Nothing asked for: the middle of the band is what a technician wants to set.
  return { netFacingPsi: middleOfBand(bandPsi) };
}
