import { basename } from 'node:path';
import { decodeText } from '../../adapters/files/decode-text.ts';
import { readLoggerBytes } from '../../adapters/files/read-logger-bytes.ts';
import type { PlatenSurvey, ProbePlace, SurveyedProbe } from '../../core/survey/PlatenSurvey.ts';
import { type GivenPlace, readPlaceList, readPlaceTable } from '../../core/survey/read-places.ts';
import { surveyPlaten } from '../../core/survey/survey-platen.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { parseTemperatureDifference } from '../../core/units/parse-temperature-difference.ts';
import { withoutSpikes } from '../../core/warm-up/without-spikes.ts';
import { OptionError } from '../options/OptionError.ts';
import type { StoreOptions } from '../options/with-store.ts';
import type { SourceOptions } from '../sources/Source.ts';
import { type OpenPlatens, openPlatens } from './open-platens.ts';
import { aboveZero } from './warm-up-rules.ts';

/** Key under which a recording's head keeps the probes' places, written as `--positions` takes them. */
const POSITIONS_KEY = 'positions';

export interface SurveyWish extends SourceOptions, StoreOptions {
  readonly positions?: string;
  readonly limit: string;
  readonly over: string;
  readonly at?: string;
}

export interface SurveyedFiles {
  readonly opened: readonly OpenPlatens[];
  readonly survey: PlatenSurvey;
}

/** Uniformity of one platen from recordings: each probe averaged over the same stretch of its own file. */
export async function surveyOfFiles(files: readonly string[], options: SurveyWish): Promise<SurveyedFiles> {
  const opened: OpenPlatens[] = [];
  for (const file of files) opened.push(await openPlatens(file, options));
  requireOnePlaten(opened);
  const placed = givePlaces(opened, options.positions);
  const limitC = aboveZero(parseTemperatureDifference(options.limit, '--limit'), '--limit', '10F');
  const overS = parseDuration(options.over, '--over');
  const endS = options.at === undefined ? null : parseDuration(options.at, '--at');
  // Several files have a clock each: every probe is averaged over the last stretch of its own file.
  const probes = placed.map(({ probe, endedS }) => ({
    ...probe,
    samples: { ...probe.samples, timesS: probe.samples.timesS.map((timeS) => timeS - (endS ?? endedS)) },
  }));
  return { opened, survey: surveyPlaten(probes, { overS, endS: 0, limitC }) };
}

function requireOnePlaten(opened: readonly OpenPlatens[]): void {
  const roles = new Set(opened.flatMap(({ record }) => record.channels.map((channel) => channel.role)));
  if (roles.size <= 1) return;
  throw new OptionError(
    'survey: channels on the upper and on the lower platen; a survey is of one platen',
    'Name the other platen’s channels "unused" with --roles',
  );
}

function givePlaces(opened: readonly OpenPlatens[], positions: string | undefined) {
  const several = opened.length > 1;
  const all = opened.flatMap(({ name, record }) =>
    record.channels.map((channel) => ({
      name,
      channel: channel.channel,
      endedS: record.endedS,
      label: several
        ? `${neutralise(basename(name))} channel ${channel.channel}`
        : `channel ${channel.channel}`,
      samples: withoutSpikes({
        timesS: Float64Array.from(channel.timesS),
        valuesC: Float64Array.from(channel.valuesC),
      }).samples,
    })),
  );
  const inHeads = opened.map(({ head }) => head?.further[POSITIONS_KEY]);
  const known = positions ?? (inHeads.includes(undefined) ? undefined : inHeads.join(', '));
  const placeOf = known === undefined ? () => null : placesFrom(known, all.length);
  return all.map(({ name, channel, endedS, label, samples }, index) => {
    const place = placeOf(index, name, channel);
    return { endedS, probe: { label, samples, place } satisfies SurveyedProbe };
  });
}

type PlaceOf = (index: number, file: string, channel: number) => ProbePlace | null;

function placesFrom(positions: string, probes: number): PlaceOf {
  if (
    positions.includes('/') &&
    /\d\s*(mm|cm|m|in|")/iu.test(positions) &&
    !/\.(csv|txt)$/iu.test(positions)
  ) {
    const places = readPlaceList(positions);
    if (places.length !== probes) {
      throw new OptionError(
        `--positions: expected ${probes} places, one a probe, came ${places.length}`,
        'Give x/y of every surveyed channel in order, such as "30/30mm, 270/30mm"',
      );
    }
    return (index) => places[index]!;
  }
  const table: readonly GivenPlace[] = readPlaceTable(decodeText(readLoggerBytes(positions)));
  return (_, file, channel) => {
    const found = table.find(
      (one) =>
        one.channel === channel && (one.file === null || one.file === basename(file) || one.file === file),
    );
    if (found !== undefined) return { xMm: found.xMm, yMm: found.yMm };
    throw new OptionError(
      `--positions: no place for channel ${channel} of ${neutralise(basename(file))}`,
      'Add a row for it, or name the channel "unused" with --roles',
    );
  };
}
