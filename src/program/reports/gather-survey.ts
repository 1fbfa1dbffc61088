import { basename } from 'node:path';
import { headProbes } from '../../core/probe/head-probes.ts';
import type { SurveyReportInput } from '../../core/report/survey-report.ts';
import type { StoreOptions } from '../options/with-store.ts';
import { surveyOfFiles } from '../platens/survey-of-files.ts';
import type { SourceOptions } from '../sources/Source.ts';
import { distinctProbes } from './source-trace.ts';

export interface SurveyChoice {
  readonly positions?: string;
  readonly limit?: string;
  readonly over?: string;
  readonly at?: string;
}

export type GatheredSurvey = Omit<SurveyReportInput, 'equipment' | 'note' | 'unit' | 'madeAt' | 'program'>;

/** A platen survey from recordings, with what a report needs beside. */
export async function gatherSurvey(
  files: readonly string[],
  { limit = '10F', over = '5min', ...options }: SurveyChoice & SourceOptions & StoreOptions,
): Promise<GatheredSurvey> {
  const { opened, survey } = await surveyOfFiles(files, { ...options, limit, over });
  const heads = opened.map(({ head }) => head);
  return {
    survey,
    platen: opened.flatMap(({ record }) => record.channels.map(({ role }) => role))[0] ?? 'lower-platen',
    pressName: heads.find((head) => head?.pressName !== undefined)?.pressName ?? null,
    heads,
    probes: distinctProbes(heads.flatMap((head) => (head === null ? [] : headProbes(head)))),
    recordings: opened.map(({ name, head, sound, sha256 }) => ({
      side: null,
      name: basename(name),
      madeAt: head?.madeAt ?? null,
      sound,
      sha256,
    })),
    simulated: heads.some((head) => head?.simulated === true),
  };
}
