import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { mergeStores } from '../../src/adapters/sqlite/merge-stores.ts';
import { verifyStore } from '../../src/adapters/sqlite/verify-store.ts';
import { headCure, headHighestPeakC } from '../../src/core/cure/head-cure.ts';
import { DwellwrightError } from '../../src/core/DwellwrightError.ts';
import { headProbes } from '../../src/core/probe/head-probes.ts';
import {
  brought,
  logText,
  OF_A_TRIAL,
  PLAIN_LOG,
  SOAK_S,
  withStoreAt,
  writtenFile,
} from './exchange-helpers.ts';
import { temporaryFolder } from './run-program.ts';

const folder = temporaryFolder();
let made = 0;
const freshStore = () => {
  made += 1;
  return join(folder, `store-${made}.db`);
};
const text = logText(PLAIN_LOG);
const recordings = (path: string) => withStoreAt(path, (store) => store.recordingIds().length);

describe('the same log again adds nothing', () => {
  const marked = Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(text)]);
  it.each<readonly [string, string, string | Uint8Array]>([
    ['under another name', 'other.csv', text],
    ['with CR LF', 'crlf.csv', text.replaceAll('\n', '\r\n')],
    ['with CR', 'cr.csv', text.replaceAll('\n', '\r')],
    ['with a byte order mark', 'mark.csv', marked],
    ['as UTF-16', 'wide.csv', Buffer.from(`\ufeff${text}`, 'utf16le')],
    ['with blank lines at its end', 'blank.csv', `${text}\n\n`],
    ['with spaces at the ends of lines', 'spaces.csv', text.replaceAll('\n', ' \n')],
  ])('%s', async (_, name, again) => {
    const store = freshStore();
    await brought(store, [writtenFile(folder, 'log.csv', text)], OF_A_TRIAL);
    const { files } = await brought(store, [writtenFile(folder, name, again)], OF_A_TRIAL);
    expect(files[0]).toMatchObject({ alreadyThere: { trialId: expect.any(String) } });
    expect(recordings(store)).toBe(1);
  });

  it('both in one call', async () => {
    const store = freshStore();
    const paths = [
      writtenFile(folder, 'a.csv', text),
      writtenFile(folder, 'b.csv', text.replaceAll('\n', '\r\n')),
    ];
    const { files } = await brought(store, paths, OF_A_TRIAL);
    expect(files.map((file) => 'head' in file)).toEqual([true, false]);
    expect(recordings(store)).toBe(1);
  });

  it('one figure more is another log', async () => {
    const store = freshStore();
    await brought(store, [writtenFile(folder, 'log.csv', text)], OF_A_TRIAL);
    await brought(store, [writtenFile(folder, 'longer.csv', `${text}240.0,231.00\n`)], OF_A_TRIAL);
    expect(recordings(store)).toBe(2);
  });

  it('renamed on two laptops and merged: one recording', async () => {
    const [one, two] = [freshStore(), freshStore()];
    const trial = { ...OF_A_TRIAL, trial: 'lot-7' };
    await brought(one, [writtenFile(folder, 'monday.csv', text)], trial);
    await brought(two, [writtenFile(folder, 'copy of monday.csv', text)], trial);
    expect(mergeStores({ ownPath: one, otherPath: two }).differences).toEqual([]);
    expect(recordings(one)).toBe(1);
    expect(verifyStore(one).problems).toEqual([]);
  });
});

describe('what replay may be told of a logger’s file, import may too', () => {
  it('roles, probes, cure and highest peak stand in the head, and the stored run goes by them', async () => {
    const store = freshStore();
    withStoreAt(store, (opened) =>
      opened.saveProbe(
        {
          name: 'K-07',
          thermocoupleType: 'K',
          toleranceClass: null,
          points: [],
          readerIncluded: false,
          headC: null,
          readerC: null,
        },
        '2026-03-01T08:00:00.000Z',
      ),
    );
    const file = writtenFile(
      folder,
      'two.csv',
      logText({ heading: 'Time (s),T1 (C),T2 (C)', row: (t, c) => `${t.toFixed(1)},232.20,${c.toFixed(2)}` }),
    );
    await brought(store, [file], {
      ...OF_A_TRIAL,
      closedAt: '12s',
      roles: 'upper-platen,bond-line',
      probes: '-,K-07',
      highestPeak: '460F',
      activationEnergy: '80kJ/mol',
      cureReference: '177C',
      cureRange: '120C/240C',
    });
    withStoreAt(store, (opened) => {
      const [id = ''] = opened.recordingIds();
      const head = opened.recording(id)?.head;
      if (head === undefined) throw new Error('no recording');
      expect(head.roles).toEqual(['upper-platen', 'bond-line']);
      expect(headProbes(head).map((probe) => probe?.name ?? null)).toEqual([null, 'K-07']);
      expect(headCure(head)).toMatchObject({ activationEnergyKjPerMol: 80, referenceC: 177 });
      expect(headHighestPeakC(head)).toBeCloseTo((460 - 32) / 1.8, 9);
      const [run] = opened.trialRuns(opened.trials()[0]?.trialId ?? '');
      expect(run?.result.soakTimeS).toBeCloseTo(SOAK_S, 0);
      expect(run?.result.cure?.equivalentS).toBeGreaterThan(0);
      expect(run?.result.platenAtClosingC.upper).toBeCloseTo(232.2, 6);
    });
  });

  it('roles that are more than the columns, and a closing outside the readings, are refused', async () => {
    const file = writtenFile(folder, 'one.csv', text);
    await expect(
      brought(freshStore(), [file], { ...OF_A_TRIAL, roles: 'bond-line,upper-platen' }),
    ).rejects.toThrow(/2 roles were given for 1 temperature column/);
    await expect(brought(freshStore(), [file], { ...OF_A_TRIAL, closedAt: '9999s' })).rejects.toThrow(
      /lies outside its readings/,
    );
  });

  it('rows of one channel of a file with a channel per row', async () => {
    const store = freshStore();
    const file = writtenFile(
      folder,
      'long.csv',
      logText({
        heading: 'Time (s),Sensor,Temp (C)',
        row: (t, c) => `${t.toFixed(1)},Bond line,${c.toFixed(2)}\n${t.toFixed(1)},Platen,232.20`,
      }),
    );
    await expect(brought(store, [file], OF_A_TRIAL)).rejects.toMatchObject({
      remedy: expect.stringContaining('--rows "Sensor=Bond line"'),
    });
    const { files } = await brought(store, [file], {
      ...OF_A_TRIAL,
      rows: 'Sensor=Bond line',
      closedAt: '12s',
    });
    expect(files[0]).toMatchObject({ results: [{ soakTimeS: expect.closeTo(SOAK_S, 0) }] });
  });
});

describe('many files', () => {
  it('all that do not fit are named at once, and nothing is brought in', async () => {
    const store = freshStore();
    const bare = text.replace('(C)', '');
    const paths = [
      writtenFile(folder, 'good.csv', text),
      writtenFile(folder, 'no-unit.csv', bare),
      writtenFile(folder, 'prose.csv', 'Dear reader,\n'),
    ];
    const told = await brought(store, paths, OF_A_TRIAL).catch((error: DwellwrightError) => error);
    expect(told).toMatchObject({ code: 'import-several-unfit' });
    expect((told as DwellwrightError).message).toMatch(/2 of 3 files.*no-unit\.csv.*--unit C.*prose\.csv/);
    expect(recordings(store)).toBe(0);
  });

  it('nobody is asked of each of six files when its press closed; of five they are', async () => {
    const six = [...'abcdef'].map((name, at) =>
      writtenFile(folder, `asked-${name}.csv`, logText({ ...PLAIN_LOG, stepS: 0.5 + at / 10 })),
    );
    const asked: string[] = [];
    const ask = (question: string) => {
      asked.push(question);
      return Promise.resolve('');
    };
    await brought(freshStore(), six, OF_A_TRIAL, ask);
    expect(asked).toEqual([]);
    await brought(freshStore(), six.slice(1), OF_A_TRIAL, ask);
    expect(asked).toHaveLength(5);
  });

  it('200 at once, each of its own: all in one trial, and none again the second time', async () => {
    const store = freshStore();
    const paths = Array.from({ length: 200 }, (_, at) =>
      writtenFile(
        folder,
        `many-${at}.csv`,
        `Time (s),Bond line (C)\n${Array.from({ length: 40 }, (__, row) => `${row},${20 + at / 100 + row * 5}`).join('\n')}\n`,
      ),
    );
    const first = await brought(store, paths, OF_A_TRIAL);
    expect(new Set(first.files.map((file) => ('head' in file ? file.trial?.trialId : null))).size).toBe(1);
    expect(recordings(store)).toBe(200);
    const second = await brought(store, paths, OF_A_TRIAL);
    expect(second.files.filter((file) => 'head' in file)).toEqual([]);
    expect(verifyStore(store)).toMatchObject({ sound: 200, problems: [] });
  });
});

describe('files that are no logs, with the name of one', () => {
  const wide = Array.from({ length: 1_000_000 }, (_, at) => at % 10).join(',');
  it.each<readonly [string, string | Uint8Array]>([
    [
      'a zip file',
      Buffer.concat([
        Buffer.from('PK\u0003\u0004\u0014\u0000\u0008\u0000', 'latin1'),
        Buffer.alloc(4_000, 0x9d),
      ]),
    ],
    [
      'a PDF',
      '%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n1 0 obj\n<< /Type /Catalog >>\nendobj\nxref\n0 1\n0000000000 65535 f\n%%EOF\n',
    ],
    [
      'a picture',
      Buffer.concat([
        Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16]),
        Buffer.from('JFIF'),
        Buffer.alloc(3_000, 0xa7),
      ]),
    ],
    ['zeros only', Buffer.alloc(10_000)],
    ['one line of 5 million digits', '7'.repeat(5_000_000)],
    ['a million columns', `${wide}\n${wide}\n`],
    ['a page', '<!doctype html><html><body><table><tr><td>0</td><td>20</td></tr></table></body></html>\n'],
    ['quotes that never close', '"'.repeat(50_001)],
    ['separators only', ',;\t|'.repeat(30_000)],
    ['line ends only', '\n\r'.repeat(50_000)],
    ['zeros between good rows', `Time (s),Temp (C)\n0,20\n\u0000\u0000\u0000\n1,21\n`],
  ])('%s: an error that says what to do', { timeout: 30_000 }, async (_, bytes) => {
    const store = freshStore();
    const error = await brought(store, [writtenFile(folder, 'given.csv', bytes)], OF_A_TRIAL).catch(
      (one) => one,
    );
    if (!(error instanceof DwellwrightError)) {
      // Read after all: then as a sound recording.
      expect(error).toHaveProperty('files');
      expect(verifyStore(store).problems).toEqual([]);
      return;
    }
    expect(error.remedy ?? '').not.toBe('');
    expect(error.message.length).toBeLessThan(20_000);
    expect(recordings(store)).toBe(0);
  });

  it('good files with bytes changed, lost or doubled: read, or refused with what to do (120 files)', async () => {
    const good = Buffer.from(text);
    let seed = 7;
    const next = (below: number) => {
      seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
      return seed % below;
    };
    const store = freshStore();
    for (let at = 0; at < 120; at += 1) {
      const bytes = [...good];
      for (let change = 0; change < 1 + next(6); change += 1) {
        const place = next(bytes.length);
        if (change % 3 === 0) bytes[place] = next(256);
        else if (change % 3 === 1) bytes.splice(place, 1 + next(40));
        else bytes.splice(place, 0, ...bytes.slice(place, place + next(60)));
      }
      const path = join(folder, 'mutated.csv');
      writeFileSync(path, Buffer.from(bytes));
      const error = await brought(store, [path], OF_A_TRIAL).then(
        () => null,
        (one) => one,
      );
      if (error === null) continue;
      expect(error).toBeInstanceOf(DwellwrightError);
      expect(error.remedy ?? '').not.toBe('');
    }
    expect(verifyStore(store).problems).toEqual([]);
  });
});

describe('text of a file in a terminal and a sheet', () => {
  it('escape sequences and formulas of headings and names stay harmless', async () => {
    const store = freshStore();
    const file = writtenFile(
      folder,
      '=cmd\u001b[31m.csv',
      text.replace('Bond line (C)', '=1+1\u001b]0;x\u001b\\ bond line (C)'),
    );
    const { files } = await brought(store, [file], OF_A_TRIAL);
    const [first] = files;
    expect(first !== undefined && 'head' in first && first.recognised).not.toMatch(/[\u0000-\u001f]/);
    const stored = withStoreAt(store, (opened) =>
      [...(opened.recordingText(opened.recordingIds()[0] ?? '') ?? [])].join(''),
    );
    expect(stored).not.toContain('\u001b');
    expect(readFileSync(file, 'utf8')).toContain('\u001b');
  });
});
