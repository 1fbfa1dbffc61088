import { describe, expect, it } from 'vitest';
import type { LoggerFileOptions } from '../../../src/core/logger-file/LoggerLayout.ts';
import { problemOf, readFile } from './read-file.ts';

type Case = readonly [
  title: string,
  file: string,
  options: LoggerFileOptions,
  timesS: readonly number[],
  values: readonly (number | string)[],
];

// All files are invented; expected times and values are what the literals say, units converted by definition
// (t/°C = (t/°F − 32)/1.8 and T/K − 273.15, SI Brochure 2.3.1): 212 °F = 100 °C, 392 °F = 200 °C, 373.15 K = 100 °C.
const CASES: readonly Case[] = [
  [
    'commas, seconds, unit in the heading',
    'Time (s),T1 (°C)\n0,20.5\n0.5,20.75\n1,21\n',
    {},
    [0, 0.5, 1],
    [20.5, 20.75, 21],
  ],
  [
    'semicolons and decimal comma',
    'Zeit;Temp [°C]\n0,0;20,5\n0,5;20,75\n1,0;21,0\n',
    {},
    [0, 0.5, 1],
    [20.5, 20.75, 21],
  ],
  ['tabs', 'time_ms\tTemp_F\n0\t212.0\n250\t392.0\n500\t392.0\n', {}, [0, 0.25, 0.5], [100, 200, 200]],
  [
    'spaces in columns',
    '  t      T_bond\n 0.00   20.5\n 0.10   20.6\n 0.20   20.7\n',
    { unit: 'C' },
    [0, 0.1, 0.2],
    [20.5, 20.6, 20.7],
  ],
  ['bars', 'time s|temp C\n0|20.5\n1|20.6\n2|20.7\n', {}, [0, 1, 2], [20.5, 20.6, 20.7]],
  [
    'units in a second heading',
    'Time,Temp\n[min],[K]\n0,373.15\n0.5,383.15\n1,393.15\n',
    {},
    [0, 30, 60],
    [100, 110, 120],
  ],
  [
    'units in a second heading without brackets',
    'Time,Temp\ns,degC\n0,20\n1,21\n2,22\n',
    {},
    [0, 1, 2],
    [20, 21, 22],
  ],
  [
    'preamble, blank line and comments',
    'Logger export\nSerial: 12\nStarted,2024-05-01 10:00\n\n# channels below\nTime (s),Temp (C)\n0,20\n1,21\n// paused\n2,22\n',
    {},
    [0, 1, 2],
    [20, 21, 22],
  ],
  [
    'a unit said in the preamble',
    'Temperature unit: °F\nElapsed;Probe\n0,0;212\n0,5;392\n1,0;392\n',
    {},
    [0, 0.5, 1],
    [100, 200, 200],
  ],
  [
    'ISO 8601 stamps with zone',
    'stamp,temp C\n2024-05-01T10:00:00.250Z,20\n2024-05-01T10:00:00.750Z,21\n2024-05-01T12:00:01.250+02:00,22\n',
    {},
    [0, 0.5, 1],
    [20, 21, 22],
  ],
  [
    'stamps with a space',
    'Date/Time,Temp °C\n2024-05-01 10:00:00.250,20\n2024-05-01 10:00:01.250,21\n',
    {},
    [0, 1],
    [20, 21],
  ],
  [
    'US stamps',
    'When,Temp (F)\n5/1/2024 11:59:59 AM,212\n5/1/2024 12:00:00 PM,212\n5/1/2024 12:00:01 PM,392\n',
    {},
    [0, 1, 2],
    [100, 100, 200],
  ],
  [
    'European stamps and decimal comma',
    'Datum;Temperatur °C\n31.05.2024 23:59:59;20,5\n01.06.2024 00:00:00;20,6\n',
    {},
    [0, 1],
    [20.5, 20.6],
  ],
  [
    'European stamps across a month with a slash',
    'When;Temp C\n31/05/2024 23:59:59;20\n01/06/2024 00:00:01;21\n',
    {},
    [0, 2],
    [20, 21],
  ],
  [
    'clock stamps past midnight',
    'Time,Temp C\n23:59:59,20\n00:00:00,21\n00:00:01,22\n',
    {},
    [0, 1, 2],
    [20, 21, 22],
  ],
  [
    'clock stamps with comma fraction',
    'Time;Temp C\n10:00:00,250;20\n10:00:00,750;21\n10:00:01,250;22\n',
    {},
    [0, 0.5, 1],
    [20, 21, 22],
  ],
  [
    'date and clock in two columns',
    'Date,Time,Temp C\n2024-05-01,23:59:59,20\n2024-05-02,00:00:00,21\n2024-05-02,00:00:02,22\n',
    {},
    [0, 1, 3],
    [20, 21, 22],
  ],
  ['month names', 'When,Temp C\n1-May-2024 10:00:00,20\n1-May-2024 10:00:01,21\n', {}, [0, 1], [20, 21]],
  ['epoch seconds', 'timestamp,temp_c\n1714557600.25,20\n1714557600.75,21\n', {}, [0, 0.5], [20, 21]],
  ['epoch milliseconds', 'timestamp,temp_c\n1714557600250,20\n1714557600750,21\n', {}, [0, 0.5], [20, 21]],
  [
    'a row-number column without a name',
    ',Time,Temp (C)\n0,0.0,20\n1,0.5,21\n2,1.0,22\n',
    {},
    [0, 0.5, 1],
    [20, 21, 22],
  ],
  [
    'columns by number',
    'a,b,c\n0,20,50\n1,21,51\n2,22,52\n',
    { timeColumn: '1', temperatureColumns: ['2'], unit: 'C' },
    [0, 1, 2],
    [20, 21, 22],
  ],
  [
    'columns by heading in other case, without its unit',
    'Clock (s),Probe One (C),Probe Two (C)\n0,20,50\n1,21,51\n',
    { timeColumn: 'clock', temperatureColumns: ['probe two'] },
    [0, 1],
    [50, 51],
  ],
  [
    'the bond line by name among several',
    'Time (s),Upper platen (C),Lower platen (C),Bond line (C)\n0,230,231,20\n1,230,231,21\n',
    {},
    [0, 1],
    [20, 21],
  ],
  [
    'NaN, empty, sentinel and fault word',
    'Time (s),T (C)\n0,20\n1,NaN\n2,\n3,-1000\n4,OPEN\n5,25\n',
    { temperatureColumns: ['T'] },
    [0, 1, 2, 3, 4, 5],
    [20, 'unspecified', 'missing', 'unspecified', 'open-circuit', 25],
  ],
  [
    'quoted fields with delimiter, quote and line break',
    '"Time (s)","Temp, bond (C)","Note"\n0,"20.5","a ""b"", c"\n1,"20.6","two\nlines"\n2,"20.7",""\n',
    {},
    [0, 1, 2],
    [20.5, 20.6, 20.7],
  ],
  [
    'quoted decimal commas between commas',
    'Time (s),Temp (C)\n"0,0","20,5"\n"0,5","20,6"\n',
    {},
    [0, 0.5],
    [20.5, 20.6],
  ],
  [
    'groups of thousands',
    'Time (ms),Temp (C)\n"0",20\n"1,000",21\n"2,000",22\n',
    {},
    [0, 1, 2],
    [20, 21, 22],
  ],
  ['trailing separators', 'Time (s),Temp (C),\n0,20,\n1,21,\n', {}, [0, 1], [20, 21]],
  ['trailing separators in rows only', 'Time (s);Temp (C)\n0;20;\n1;21;\n', {}, [0, 1], [20, 21]],
  ['units behind the values', 'Time,Probe\n0.0,212 °F\n0.5,392 °F\n', {}, [0, 0.5], [100, 200]],
  [
    'a text column beside',
    'Time (s),State,Temp (C)\n0,heating,20\n1,heating,21\n2,hold,22\n',
    {},
    [0, 1, 2],
    [20, 21, 22],
  ],
  ['no time column but an interval', 'Temp (C)\n20\n21\n22\n', { intervalS: 0.5 }, [0, 0.5, 1], [20, 21, 22]],
  [
    'a time unit stated',
    'Time,Temp (C)\n0,20\n250,21\n500,22\n',
    { timeUnit: 'ms' },
    [0, 0.25, 0.5],
    [20, 21, 22],
  ],
  [
    'no heading, times with decimals',
    '0.0 20.5\n0.5 20.6\n1.0 20.7\n1.5 20.6\n',
    { unit: 'C' },
    [0, 0.5, 1, 1.5],
    [20.5, 20.6, 20.7, 20.6],
  ],
  [
    'a microsecond count that wraps at 32 bits',
    'micros,temp_c\n4294000000,20\n4294900000,21\n832704,22\n',
    {},
    [0, 0.9, 1.8],
    [20, 21, 22],
  ],
  [
    'rows that name their values',
    '10:00:00 T1=21.5 C T2=22.0 C\n10:00:01 T1=21.6 C T2=22.0 C\n10:00:02 T1=OPEN T2=22.0 C\n',
    { temperatureColumns: ['T1'] },
    [0, 1, 2],
    [21.5, 21.6, 'open-circuit'],
  ],
  ['rows as JSON', '{"t":0.0,"temp":20.5}\n{"t":0.5,"temp":20.6}\n', { unit: 'C' }, [0, 0.5], [20.5, 20.6]],
  [
    'stamps in brackets',
    '[2024-05-01 10:00:00.125] 212.0 F\n[2024-05-01 10:00:00.625] 392.0 F\n',
    {},
    [0, 0.5],
    [100, 200],
  ],
  [
    'minutes and seconds with a fraction',
    'Elapsed,Temp (C)\n59:59.5,20\n60:00.0,21\n',
    {},
    [0, 0.5],
    [20, 21],
  ],
  [
    'hours and minutes as stated',
    'Time,Temp (C)\n10:00,20\n10:01,21\n',
    { timeUnit: 'h' },
    [0, 60],
    [20, 21],
  ],
  [
    'minutes and seconds as stated',
    'Time,Temp (C)\n10:00,20\n10:01,21\n',
    { timeUnit: 'min' },
    [0, 1],
    [20, 21],
  ],
  [
    'days as spreadsheets count them, half a day apart',
    'Date,Temp (C)\n45413.0000,20\n45413.5000,21\n',
    {},
    [0, 43_200],
    [20, 21],
  ],
  [
    'a heading of several words above columns of spaces',
    'Time (s)   Bond line (C)   Air (C)\n0.0   20.5   23.0\n0.5   20.6   23.0\n',
    {},
    [0, 0.5],
    [20.5, 20.6],
  ],
  [
    'a unit column behind each channel',
    'Time (s),CH1,Unit,CH2,Unit\n0,212,F,20,C\n1,392,F,20,C\n',
    { temperatureColumns: ['CH1'] },
    [0, 1],
    [100, 200],
  ],
  [
    'the measured one beside a set point',
    'Time (s),Setpoint (C),Actual (C)\n0,200,20\n1,200,21\n',
    {},
    [0, 1],
    [20, 21],
  ],
  [
    'a garbled row between heading and values',
    'Time (s),Temp (C)\nxx,yy\n0,20\n1,21\n',
    {},
    [0, 1],
    [20, 21],
  ],
  ['CR LF', 'Time (s),Temp (C)\r\n0,20\r\n1,21\r\n', {}, [0, 1], [20, 21]],
  ['CR alone', 'Time (s),Temp (C)\r0,20\r1,21\r', {}, [0, 1], [20, 21]],
  ['a byte order mark', '\ufeffTime (s),Temp (C)\n0,20\n1,21\n', {}, [0, 1], [20, 21]],
]; // prettier-ignore

describe('files of other loggers', () => {
  it.each(CASES)('reads %s', (_, file, options, timesS, values) => {
    const read = readFile(file, Object.freeze(options));
    expect(read.values).toEqual(values);
    expect(read.timesS).toEqual(timesS.map((timeS) => expect.closeTo(timeS, 6)));
    expect(read.troubles).toEqual([]);
  });

  it.each([
    ['UTF-16 little end first', 'utf16le', 'fffe'],
    ['UTF-16 without byte order mark', 'utf16le', ''],
    ['Latin-1', 'latin1', ''],
  ] as const)('reads a degree sign in %s', (_, encoding, mark) => {
    const text = Buffer.from('Time (s),T1 (°F)\r\n0,212\r\n1,392\r\n', encoding);
    expect(readFile(Buffer.concat([Buffer.from(mark, 'hex'), text])).values).toEqual([100, 200]);
  });

  it('reads UTF-16 big end first', () => {
    const text = Buffer.from('\ufeffTime (s),T1 (°F)\r\n0,212\r\n1,392\r\n', 'utf16le').swap16();
    expect(readFile(text).values).toEqual([100, 200]);
  });

  it('gives the first row arrival 0 and each row the time since, in whole µs', () => {
    const { entries } = readFile('Time (s),Temp (C)\n12.5,20\n13.25,21\n');
    expect(entries.map((entry) => entry.arrivedUs)).toEqual([0, 0, 750_000]);
  });

  it('puts the bond line first and names the platens', () => {
    const { layout, samples } = readFile(
      'Time (s),Upper platen (F),Lower platen (F),Bond line (F),Humidity (%)\n0,446,448,70,40\n1,446,448,71,40\n',
    );
    expect(layout.temperatures.map((one) => one.role)).toEqual(['bond-line', 'upper-platen', 'lower-platen']);
    expect(samples[0]?.channels).toHaveLength(3);
  });

  it('says what it recognised, with the unit and where it is from', () => {
    const { layout } = readFile('Time;T1\n0,0;20,5\n0,5;20,6\n', { unit: 'C', temperatureColumns: ['T1'] });
    expect(layout.recognised).toBe(
      '2 columns separated by semicolons, decimal comma; time from column 1 "Time" in seconds (no unit stated, taken as seconds); temperature from column 2 "T1", degrees Celsius as stated by you',
    );
  });

  it('keeps escape sequences of a heading out of its words', () => {
    const { layout } = readFile('Time (s),Temp\u001b[2J (C)\n0,20\n1,21\n');
    expect(layout.recognised).not.toContain('\u001b');
  });
});

describe('rows that share a written time', () => {
  it('spreads 4 rows a second evenly, the first second filled from its end', () => {
    const second = (stamp: string, count: number) => `${stamp},20\n`.repeat(count);
    const file = `Time,Temp C\n${second('10:00:00', 2)}${second('10:00:01', 4)}${second('10:00:02', 4)}${second('10:00:03', 3)}`;
    const { timesS, layout } = readFile(file);
    expect(timesS).toEqual([0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3]);
    expect(layout.timeResolutionS).toBe(1);
    expect(layout.recognised).toContain('4 rows share a time, spread evenly over 1 s');
  });

  it('leaves times alone where one row of five is written twice', () => {
    expect(readFile('Time (s),T (C)\n0,20\n1,21\n1,21\n2,22\n3,23\n').timesS).toEqual([0, 1, 1, 2, 3]);
  });

  it('states the resolution of stamps of their own: 0.01 s for two decimals of a second', () => {
    expect(readFile('Time (s),Temp (C)\n0.00,20\n0.51,21\n1.02,22\n').layout.timeResolutionS).toBe(0.01);
  });
});

describe('trouble in a file', () => {
  const head = 'Time (s),T1 (C),T2 (C)\n0,20.5,30.5\n1,20.6,30.6\n';
  const one = { temperatureColumns: ['T1'] };

  it.each([
    ['fewer columns', '2,2'],
    ['the last number cut', '2,20.7,30'],
    ['the last number cut before its decimals', '2,20.7,30.'],
    ['an open quote', '2,20.7,"30.7'],
  ])('takes a last line without line end and with %s for no reading', (_, line) => {
    const read = readFile(head + line, { temperatureColumns: ['T1', 'T2'] });
    expect(read.values).toEqual([20.5, 20.6]);
    expect(read.troubles).toEqual(['cut-off']);
  });

  it('reads a last line without line end whose last number is whole', () => {
    expect(readFile(`${head}2,20.7,30.7`, { temperatureColumns: ['T2'] }).values).toEqual([30.5, 30.6, 30.7]);
  });

  it('reads a whole temperature in a last line that is cut only in a column not used', () => {
    expect(readFile(`${head}2,20.7,3`, one).values).toEqual([20.5, 20.6, 20.7]);
  });

  it.each(['2,20.7', 'garbage', '2,20.7,30.7,2,20.7,30.7', '2,2o.7,30.7', 'x,20.7,30.7', '2,20.6.7,30.7'])(
    'counts the line %j as trouble and reads on',
    (line) => {
      const rest =
        '3,20.8,30.8\n4,20.9,30.9\n5,21.0,31.0\n6,21.1,31.1\n7,21.2,31.2\n8,21.3,31.3\n9,21.4,31.4\n10,21.5,31.5\n11,21.5,31.5\n12,21.5,31.5\n';
      const read = readFile(`${head}${line}\n${rest}`, one);
      expect(read.troubles).toEqual(['garbage']);
      expect(read.values).toHaveLength(12);
    },
  );

  it('says "started" where the heading comes again and times begin anew; arrival goes on', () => {
    const { events, entries } = readFile(`${head}${head}`, one);
    expect(events.map((event) => event.kind)).toEqual([
      'remark',
      'sample',
      'sample',
      'remark',
      'started',
      'sample',
      'sample',
    ]); // prettier-ignore
    expect(entries.map((entry) => entry.arrivedUs / 1e6)).toEqual([0, 0, 1, 1, 2, 3].map((value) => value));
  });

  it('takes a heading that comes again on every page for a remark when times run on', () => {
    const { events } = readFile(`${head}Time (s),T1 (C),T2 (C)\n2,20.7,30.7\n`, one);
    expect(events.map((event) => event.kind)).toEqual(['remark', 'sample', 'sample', 'remark', 'sample']);
  });

  it('leaves a step back without heading for the pipeline to see', () => {
    const { samples } = readFile(`${head}0.5,20.7,30.7\n`, one);
    expect(samples.map((sample) => sample.deviceTimeUs)).toEqual([0, 1_000_000, 500_000]);
  });
});

describe('files that need an option', () => {
  it.each([
    ['no unit', 'Time (s),T1\n0,20\n1,21\n', {}, 'logger-file-unit-unknown', /--unit C/],
    [
      'two temperatures',
      'Time (s),T1 (C),T2 (C)\n0,20,30\n1,21,31\n',
      {},
      'logger-file-temperature-unknown',
      /--temperature-column "T1 \(C\)" or --temperature-column "T2 \(C\)"/,
    ],
    [
      'two temperatures and no unit',
      'Time (s),T1,T2\n0,20,30\n1,21,31\n',
      {},
      'logger-file-temperature-unknown',
      /--temperature-column T1 or --temperature-column T2, together with --unit C/,
    ],
    [
      'a contradicted unit',
      'Time (s),T1 (C)\n0,20\n1,21\n',
      { unit: 'F' },
      'logger-file-unit-contradicted',
      /leave --unit out/,
    ],
    [
      'an unknown temperature column',
      'Time (s),T1 (C)\n0,20\n1,21\n',
      { temperatureColumns: ['T9'] },
      'logger-file-column-unknown',
      /headings or numbers/,
    ],
    [
      'an unknown time column',
      'Time (s),T1 (C)\n0,20\n1,21\n',
      { timeColumn: '7' },
      'logger-file-column-unknown',
      /headings or numbers/,
    ],
    [
      'no time column',
      'T1 (C),T2 (C)\n20,30\n21,30\n20,31\n',
      { temperatureColumns: ['T1'] },
      'logger-file-time-unknown',
      /--time-column .*--interval 0\.5s/,
    ],
    [
      'whole-number times of 250 without unit',
      'Time,T1 (C)\n0,20\n250,21\n500,22\n',
      {},
      'logger-file-time-unit-unknown',
      /--time-unit ms/,
    ],
    [
      'a bare count that could be seconds or rows',
      '1,20.5\n2,20.6\n3,20.5\n4,20.7\n',
      { unit: 'C', temperatureColumns: ['2'] },
      'logger-file-time-unknown',
      /--time-column/,
    ],
    [
      'times that stand still',
      'Time (s),T1 (C)\n5,20\n5,21\n5,22\n',
      {},
      'logger-file-time-unknown',
      /--interval/,
    ],
    ['nothing at all', '', {}, 'logger-file-empty', /check/],
    ['prose', 'Dear reader,\nthere are no numbers here.\n', {}, 'logger-file-no-rows', /CSV/],
    ['binary data', '\u0000\u0001\u0002\u0003PK\u0000', {}, 'logger-file-not-text', /CSV/],
    [
      'both interval and time column',
      'Time (s),T1 (C)\n0,20\n1,21\n',
      { timeColumn: '1', intervalS: 1 },
      'logger-file-option',
      /--interval/,
    ],
  ] as readonly (readonly [string, string, LoggerFileOptions, string, RegExp])[])(
    'refuses %s and names the option to add',
    (_, file, options, code, remedy) => {
      const problem = problemOf(file, options);
      expect(problem.code).toBe(code);
      expect(problem.exitCode).toBe(2);
      expect(problem.remedy).toMatch(remedy);
    },
  ); // prettier-ignore

  it('lists the columns seen', () => {
    expect(problemOf(',Time,Q1,T1,T2\n0,0.0,100,20,30\n1,1.0,100,21,31\n').message).toContain(
      'columns: 1 (no heading), 2 "Time", 3 "Q1", 4 "T1", 5 "T2"',
    );
  });
});
