import { describe, expect, it } from 'vitest';
import type { LoggerFileOptions } from '../../../src/core/logger-file/LoggerLayout.ts';
import { readFile } from './read-file.ts';

/** What a file is read as, or the code and the words that its refusal must hold. */
type Outcome =
  | readonly [timesS: readonly number[], values: readonly (number | string)[]]
  | { readonly code: string; readonly remedy: RegExp };
type Case = readonly [title: string, file: string, options: LoggerFileOptions, outcome: Outcome];

const preamble = Array.from({ length: 30 }, (_, at) => `Channel ${at + 1} gain: 1.00 offset ${at}`).join(
  '\n',
);

// All files are invented, of general kinds only; expected times and values are what the literals say, units converted by
// definition (t/°C = (t/°F − 32)/1.8 and T/K − 273.15, SI Brochure 2.3.1): 212 °F = 100 °C, 392 °F = 200 °C, 373.15 K = 100 °C.
const CASES: readonly Case[] = [
  [
    'ISO stamps with microseconds and no zone',
    'Time,Temp (C)\n2026-03-02T10:00:00.000000,20\n2026-03-02T10:00:00.250000,21\n',
    {},
    [
      [0, 0.25],
      [20, 21],
    ],
  ],
  [
    'year first with slashes',
    'Time,Temp (C)\n2026/03/02 10:00:00,20\n2026/03/02 10:00:01,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'year first without signs between (20260302 100000)',
    'Time,Temp (C)\n20260302 100000,20\n20260302 100001,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'year first, compact with T',
    'Time,Temp (C)\n20260302T100000Z,20\n20260302T100001Z,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'US stamps of two-digit year, 12 hours, across noon',
    'Date Time,Temp (F)\n03/02/26 11:59:59 AM,212\n03/02/26 12:00:01 PM,392\n',
    {},
    [
      [0, 2],
      [100, 200],
    ],
  ],
  [
    '12 hours without a space before pm, across midnight',
    'Time,Temp (C)\n11:59:59pm,20\n12:00:01am,21\n',
    {},
    [
      [0, 2],
      [20, 21],
    ],
  ],
  [
    '12 hours with a narrow no-break space before PM',
    'Time,Temp (C)\n3/2/2026 1:00:00\u202fPM,20\n3/2/2026 1:00:01\u202fPM,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'dots in the date, seconds with decimal comma',
    'Datum/Uhrzeit;Temperatur (°C)\n02.03.2026 10:00:00,0;20,5\n02.03.2026 10:00:00,5;20,6\n',
    {},
    [
      [0, 0.5],
      [20.5, 20.6],
    ],
  ],
  [
    'a weekday before the date',
    'When,Temp (C)\nMon 2026-03-02 10:00:00,20\nMon 2026-03-02 10:00:01,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'clock before date in one column',
    'When,Temp (C)\n10:00:00 02/03/2026,20\n10:00:01 02/03/2026,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'epoch seconds without decimals',
    'epoch,temp_c\n1772445600,20\n1772445601,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'epoch microseconds',
    'epoch,temp_c\n1772445600000000,20\n1772445600500000,21\n',
    {},
    [
      [0, 0.5],
      [20, 21],
    ],
  ],
  [
    'elapsed h:mm:ss over 24 hours',
    'Elapsed,Temp (C)\n23:59:59,20\n24:00:00,21\n24:00:01,22\n',
    {},
    [
      [0, 1, 2],
      [20, 21, 22],
    ],
  ],
  [
    'elapsed with days in front',
    'Elapsed,Temp (C)\n0 23:59:59,20\n1 00:00:00,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'elapsed as 0d 00h 00m 01s',
    'Elapsed,Temp (C)\n0d 00h 00m 00s,20\n0d 00h 00m 01s,21\n0d 00h 01m 01s,22\n',
    {},
    [
      [0, 1, 61],
      [20, 21, 22],
    ],
  ],
  [
    'relative seconds with s behind',
    'Time,Temp (C)\n0.0 s,20\n0.5 s,21\n1.0 s,22\n',
    {},
    [
      [0, 0.5, 1],
      [20, 21, 22],
    ],
  ],
  [
    'ISO durations',
    'Elapsed,Temp (C)\nPT0S,20\nPT0.5S,21\nPT1M0S,22\n',
    {},
    [
      [0, 0.5, 60],
      [20, 21, 22],
    ],
  ],
  [
    'tab, decimal comma, unit row with a degree sign',
    'Zeit\tBond line\n[s]\t[°C]\n0,0\t20,5\n0,5\t20,6\n',
    {},
    [
      [0, 0.5],
      [20.5, 20.6],
    ],
  ],
  [
    'fixed width, empty field in the middle',
    'Time(s)  T1(C)   T2(C)\n   0.0   20.5    23.0\n   0.5           23.1\n   1.0   20.7    23.2\n',
    { temperatureColumns: ['T2'] },
    [
      [0, 0.5, 1],
      [23, 23.1, 23.2],
    ],
  ],
  [
    'units in a third heading row below numbers of channels',
    'Date,Time,1,2\n,,Bond line,Upper platen\n,,degC,degC\n2026-03-02,10:00:00,20,230\n2026-03-02,10:00:01,21,230\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'a unit with a space and bracket',
    'Time [s];Temp [ °F ]\n0;212\n1;392\n',
    {},
    [
      [0, 1],
      [100, 200],
    ],
  ],
  [
    'a unit suffix in every cell, decimal comma',
    'Time;Probe\n0,0;20,5 °C\n0,5;20,6 °C\n',
    {},
    [
      [0, 0.5],
      [20.5, 20.6],
    ],
  ],
  [
    'five dashes, OL, BLANK, #### for missing',
    'Time (s),Temp (C)\n0,20\n1,-----\n2,OL\n3,\n4,####\n5,21\n',
    {},
    [
      [0, 1, 2, 3, 4, 5],
      [20, 'unspecified', 'over-range', 'missing', 'unspecified', 21],
    ],
  ],
  [
    'over-range codes 9.9E37 and +9.90000000E+37',
    'Time (s),Temp (C)\n0,20\n1,9.9E37\n2,+9.90000000E+37\n3,21\n',
    {},
    [
      [0, 1, 2, 3],
      [20, 'unspecified', 'unspecified', 21],
    ],
  ],
  [
    'over-range as >1372 and < -200',
    'Time (s),Temp (C)\n0,20\n1,>1372\n2,<-200\n3,21\n',
    {},
    [
      [0, 1, 2, 3],
      [20, 'over-range', 'over-range', 21],
    ],
  ],
  [
    'numbers in exponents',
    'Time (s),Temp (C)\n0.000E+00,+2.050E+01\n5.000E-01,+2.060E+01\n',
    {},
    [
      [0, 0.5],
      [20.5, 20.6],
    ],
  ],
  [
    'a preamble of 30 lines with numbers',
    `${preamble}\nTime (s),Temp (C)\n0,20\n1,21\n2,22\n`,
    {},
    [
      [0, 1, 2],
      [20, 21, 22],
    ],
  ],
  [
    'a preamble with the same delimiter and number of columns',
    'Rate,1\nChannels,1\nSerial,1234\nTime (s),Temp (C)\n0,20\n1,21\n2,22\n3,23\n',
    {},
    [
      [0, 1, 2, 3],
      [20, 21, 22, 23],
    ],
  ],
  [
    'a summary behind the rows',
    'Time (s),Temp (C)\n0,20\n1,21\n2,22\n\nMinimum,20\nMaximum,22\nEnd of data\n',
    {},
    [
      [0, 1, 2],
      [20, 21, 22],
    ],
  ],
  [
    'a clock turned back by an hour (end of summer time)',
    'Time,Temp (C)\n2026-11-01 01:59:58,20\n2026-11-01 01:59:59,21\n2026-11-01 01:00:00,22\n2026-11-01 01:00:01,23\n',
    {},
    [
      [0, 1, -3598, -3597],
      [20, 21, 22, 23],
    ],
  ],
  [
    'gaps in time',
    'Time (s),Temp (C)\n0,20\n1,21\n60,22\n61,23\n',
    {},
    [
      [0, 1, 60, 61],
      [20, 21, 22, 23],
    ],
  ],
  [
    'comments with semicolon in front',
    '; made by hand\n; second line\nTime (s),Temp (C)\n0,20\n1,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'a heading behind a comment sign',
    '# Time (s),Temp (F)\n0,212\n1,392\n',
    {},
    [
      [0, 1],
      [100, 200],
    ],
  ],
  [
    'a heading behind a comment sign, spaces',
    '# time_s temp_C\n0.0 20\n0.5 21\n',
    {},
    [
      [0, 0.5],
      [20, 21],
    ],
  ],
  [
    'a separator line "sep=;" for spreadsheets',
    'sep=;\nTime (s);Temp (C)\n0;20\n1;21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'thousands with a space',
    'Time (ms);Temp (C)\n0;20\n1 000;21\n2 000;22\n',
    {},
    [
      [0, 1, 2],
      [20, 21, 22],
    ],
  ],
  [
    'no last line end, one decimal everywhere',
    'Time (s),Temp (C)\n0,20.1\n1,20.2\n2,20.3',
    {},
    [
      [0, 1, 2],
      [20.1, 20.2, 20.3],
    ],
  ],
  [
    'every field in quotes, units in the heading',
    '"Time (s)";"Temp (°C)"\n"0,0";"20,5"\n"0,5";"20,6"\n',
    {},
    [
      [0, 0.5],
      [20.5, 20.6],
    ],
  ],
  [
    'single quotes round the fields',
    "'Time (s)','Temp (C)'\n'0','20'\n'1','21'\n",
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'a channel per row with values named by channel',
    'Time (s),Channel,Value,Unit\n0,1,20,C\n0,2,230,C\n1,1,21,C\n1,2,230,C\n2,1,22,C\n2,2,230,C\n',
    {},
    { code: 'logger-file-channel-per-row', remedy: /--rows "(Channel|Sensor)=(1|Bond line)"/ },
  ],
  [
    'a channel per row, named',
    'Time,Sensor,Temp (C)\n10:00:00,Bond line,20\n10:00:00,Platen,230\n10:00:01,Bond line,21\n10:00:01,Platen,230\n',
    {},
    { code: 'logger-file-channel-per-row', remedy: /--rows "(Channel|Sensor)=(1|Bond line)"/ },
  ],
  [
    'kelvin in the heading',
    'Time (s),Temp (K)\n0,373.15\n1,473.15\n',
    {},
    [
      [0, 1],
      [100, 200],
    ],
  ],
  [
    'unit as a word',
    'Seconds,Degrees Fahrenheit\n0,212\n1,392\n',
    {},
    [
      [0, 1],
      [100, 200],
    ],
  ],
  [
    'steps of a unit, which would have to be multiplied first',
    'time (s),temp (0.1 °C)\n0,240\n1,241\n',
    {},
    { code: 'logger-file-temperature-unknown', remedy: /write temperatures/ },
  ],
  [
    'millivolts are no temperature',
    'Time (s),TC1 (mV)\n0,0.8\n1,0.9\n',
    {},
    { code: 'logger-file-temperature-unknown', remedy: /temperature/ },
  ],
  [
    'millivolts picked by hand',
    'Time (s),TC1 (mV)\n0,0.8\n1,0.9\n',
    { temperatureColumns: ['TC1'], unit: 'C' },
    { code: 'logger-file-unit-contradicted', remedy: /temperature/ },
  ],
  [
    'two rates: a slow channel filled only every other row',
    'Time (s),Bond line (C),Platen upper (C)\n0,20,230\n0.5,21,\n1,22,231\n1.5,23,\n',
    {},
    [
      [0, 0.5, 1, 1.5],
      [20, 21, 22, 23],
    ],
  ],
  [
    'two rates: blocks of times of their own',
    'Time1 (s),T1 (C),Time2 (s),T2 (C)\n0,20,0,230\n0.5,21,1,231\n1,22,,\n',
    { temperatureColumns: ['T1'] },
    [
      [0, 0.5, 1],
      [20, 21, 22],
    ],
  ],
  [
    'two rates, the second channel',
    'Time (s),T1 (C),Time (s),T2 (C)\n0,20,0,230\n0.5,21,1,231\n1,22,2,232\n',
    { temperatureColumns: ['T2'] },
    [
      [0, 1, 2],
      [230, 231, 232],
    ],
  ],
  [
    'two rates, nothing picked',
    'Time (s),Bond line (C),Time (s),Upper platen (C)\n0,20,0,230\n0.5,21,1,231\n',
    {},
    { code: 'logger-file-temperature-unknown', remedy: /--temperature-column "Bond line \(C\)" or/ },
  ],
  [
    'a channel per row, one channel asked for',
    'Time,Sensor,Temp (C)\n10:00:00,Bond line,20\n10:00:00,Platen,230\n10:00:01,Bond line,21\n10:00:01,Platen,230\n',
    { rows: 'Sensor=bond line' },
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'a channel per row, by number, no shared times',
    'ms;ch;value\n0;1;212\n100;2;400\n200;1;392\n300;2;401\n',
    { rows: 'ch=1', unit: 'F', temperatureColumns: ['value'] },
    [
      [0, 0.2],
      [100, 200],
    ],
  ],
  [
    'a channel per row, a channel that is not there',
    'Time,Sensor,Temp (C)\n10:00:00,A,20\n10:00:01,B,230\n',
    { rows: 'Sensor=Z' },
    { code: 'logger-file-option', remedy: /one of: A, B/ },
  ],
  [
    'rows of a column that is not there',
    'Time (s),Temp (C)\n0,20\n1,21\n',
    { rows: 'Sensor=Z' },
    { code: 'logger-file-column-unknown', remedy: /--rows/ },
  ],
  [
    'a date and a clock as bare digits',
    'Date,Time,Temp (C)\n20260302,100000,20\n20260302,100001,21\n20260302,100002,22\n',
    {},
    { code: 'logger-file-time-unit-unknown', remedy: /colons/ },
  ],
  [
    'milliseconds in a column of their own',
    'Date,Time,ms,Temp (C)\n2026-03-02,10:00:00,0,20\n2026-03-02,10:00:00,500,21\n2026-03-02,10:00:01,0,22\n2026-03-02,10:00:01,500,23\n',
    {},
    [
      [0, 0.5, 1, 1.5],
      [20, 21, 22, 23],
    ],
  ],
  [
    'points for thousands, comma for decimals',
    'Zeit (ms);Temp (°C)\n0;20,5\n1.000;20,6\n2.000;1.020,7\n',
    {},
    [
      [0, 1, 2],
      [20.5, 20.6, 1020.7],
    ],
  ],
  [
    'names in one more column than rows hold',
    'Time (s),Temp (C),Note\n0,20\n1,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'a quote never closed in a note',
    'Time (s),Temp (C),Note\n0,20,\n1,21,5" probe\n2,22,\n',
    {},
    [
      [0, 1, 2],
      [20, 21, 22],
    ],
  ],
  [
    'rows written twice',
    'Time (s),Temp (C)\n0,20\n1,21\n1,21\n2,22\n3,23\n4,24\n',
    {},
    [
      [0, 1, 1, 2, 3, 4],
      [20, 21, 21, 22, 23, 24],
    ],
  ],
  [
    'headings again on every page',
    'Time (s),Temp (C)\n0,20\n1,21\nPage 2\nTime (s),Temp (C)\n2,22\n3,23\n',
    {},
    [
      [0, 1, 2, 3],
      [20, 21, 22, 23],
    ],
  ],
  [
    'an offset from UTC behind a space',
    'Time,Temp (C)\n2026-03-02 10:00:00 +0100,20\n2026-03-02 10:00:01 +0100,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'a named zone',
    'Time,Temp (C)\n2026-03-02 10:00:00 CET,20\n2026-03-02 10:00:01 CET,21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    '12 hours as a. m.',
    'Time,Temp (C)\n02/03/2026 11:59:59 a. m.,20\n02/03/2026 12:00:01 p. m.,21\n',
    {},
    [
      [0, 2],
      [20, 21],
    ],
  ],
  [
    'months by their names in German',
    'Zeit;Temp (C)\n28. Feb 2026 23:59:59;20\n1. Mär 2026 00:00:00;21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'months by their names in French',
    'Heure;Temp (C)\n31 juil. 2026 23:59:59;20\n1 août 2026 00:00:00;21\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
  [
    'a column of its own for each unit, of times too',
    'Time;Unit;Temp;Unit\n0;ms;20;C\n100;ms;21;C\n200;ms;22;C\n',
    {},
    [
      [0, 0.1, 0.2],
      [20, 21, 22],
    ],
  ],
  [
    'a comma between columns and in every number',
    'Time (s),Temp (C)\n0,5,20,5\n1,0,20,6\n1,5,20,7\n',
    {},
    { code: 'logger-file-no-rows', remedy: /semicolons/ },
  ],
  [
    'decimal commas between spaces, a date and a clock',
    '2026-03-02 10:00:00 20,5\n2026-03-02 10:00:01 20,6\n',
    { unit: 'C' },
    [
      [0, 1],
      [20.5, 20.6],
    ],
  ],
  [
    'a min and max column beside each mean',
    'Time (s),Temp avg (C),Temp min (C),Temp max (C)\n0,20,19,21\n1,21,20,22\n',
    {},
    { code: 'logger-file-temperature-unknown', remedy: /--temperature-column/ },
  ],
  [
    'hours, minutes and seconds in columns of their own',
    'h,min,s,Temp (C)\n10,0,0,20\n10,0,1,21\n10,1,0,22\n',
    {},
    { code: 'logger-file-time-unknown', remedy: /--interval/ },
  ],
  [
    'rows in reverse order, the latest first',
    'Time (s),Temp (C)\n3,23\n2,22\n1,21\n0,20\n',
    {},
    { code: 'logger-file-time-unknown', remedy: /turn|sort|order/ },
  ],
  [
    'a point count and an interval in the preamble',
    'Sample interval: 0.5 s\nPoint,Temp (C)\n1,20\n2,21\n3,22\n',
    {},
    { code: 'logger-file-time-unknown', remedy: /--interval/ },
  ],
  [
    'an alarm letter behind the value',
    'Time (s),Temp (C)\n0,20.5\n1,20.6 A\n2,20.7\n',
    {},
    [
      [0, 2],
      [20.5, 20.7],
    ],
  ],
  [
    'a minus sign of typography',
    'Time (s),Temp (C)\n0,\u22125.5\n1,20\n',
    {},
    [
      [0, 1],
      [-5.5, 20],
    ],
  ],
  [
    'full-width digits are told, not guessed',
    'Time (s),Temp (C)\n0,２０\n1,２１\n',
    {},
    { code: 'logger-file-no-rows', remedy: /CSV/ },
  ],
  [
    'Markdown table',
    '| Time (s) | Temp (C) |\n|---|---|\n| 0 | 20 |\n| 1 | 21 |\n',
    {},
    [
      [0, 1],
      [20, 21],
    ],
  ],
];

// Found by the test of any text.
it('times that span more than whole microseconds can count are refused, not summed past their end', () => {
  const file = 'Time,T1 (C)\n0,1\n1251000,2\n0,3\n1251000,4\n0,5\n1251000,6\n';
  expect(() => readFile(file, { timeUnit: 'h' })).toThrow(/285 years/);
});

describe('further layouts', () => {
  it.each(CASES)('%s', (_, file, options, outcome) => {
    if (!('code' in outcome)) {
      const read = readFile(file, options);
      expect([read.values, read.timesS]).toEqual([
        outcome[1],
        outcome[0].map((timeS) => expect.closeTo(timeS, 6)),
      ]);
      return;
    }
    const told = (() => {
      try {
        return { read: readFile(file, options).layout.recognised };
      } catch (error) {
        return error as { code: string; remedy: string };
      }
    })();
    expect(told).toMatchObject({ code: outcome.code, remedy: expect.stringMatching(outcome.remedy) });
  });
});
