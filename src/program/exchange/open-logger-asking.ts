import { LoggerFileProblem } from '../../core/logger-file/LoggerFileProblem.ts';
import type { LoggerFileOptions, LoggerLayout } from '../../core/logger-file/LoggerLayout.ts';
import { openLoggerFile } from '../../core/logger-file/open-logger-file.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { importQuestions } from '../../core/text/exchange-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import type { Ask } from './ask.ts';

type Mutable = { -readonly [Key in keyof LoggerFileOptions]: LoggerFileOptions[Key] };

const TIME_UNITS = ['s', 'ms', 'us', 'min', 'h'] as const;
const UNITS = ['C', 'F', 'K'] as const;

/**
 * Finds the layout of a logger's file; what it does not show is asked for where somebody can answer, until it can be read.
 * Otherwise the file's own problem is thrown, which names the options to add.
 */
export async function openLoggerAsking(
  name: string,
  bytes: Uint8Array,
  given: LoggerFileOptions,
  ask: Ask | null,
): Promise<{ readonly layout: LoggerLayout; readonly options: LoggerFileOptions }> {
  let options: Mutable = { ...given };
  for (;;) {
    try {
      return { layout: openLoggerFile(bytes, options).layout, options };
    } catch (error) {
      if (!(error instanceof LoggerFileProblem) || ask === null) throw error;
      const answered = await answerTo(
        error,
        options,
        ask,
        `${neutralise(name)}: ${neutralise(error.message)}`,
      );
      if (answered === null) throw error;
      options = answered;
    }
  }
}

/** Options with the answer in them; null where no answer helps. */
async function answerTo(
  problem: LoggerFileProblem,
  options: Mutable,
  ask: Ask,
  why: string,
): Promise<Mutable | null> {
  switch (problem.code) {
    case 'logger-file-unit-unknown':
      return { ...options, unit: await oneOf(ask, `${why}\n${importQuestions.unit}`, UNITS) };
    case 'logger-file-unit-contradicted': {
      const { unit: _unit, ...rest } = options;
      return rest;
    }
    case 'logger-file-time-unit-unknown':
      return { ...options, timeUnit: await oneOf(ask, `${why}\n${importQuestions.timeUnit}`, TIME_UNITS) };
    case 'logger-file-temperature-unknown':
      return {
        ...options,
        temperatureColumns: [await ask(`${why}\n${importQuestions.temperatureColumn}`, notEmpty)],
      };
    case 'logger-file-time-unknown':
      return askTime(options, ask, why);
    case 'logger-file-column-unknown':
      return askColumnAgain(problem, options, ask, why);
    default:
      return null;
  }
}

async function askTime(options: Mutable, ask: Ask, why: string): Promise<Mutable> {
  const { timeColumn: _timeColumn, intervalS: _intervalS, ...rest } = options;
  const column = await ask(`${why}\n${importQuestions.timeColumn}`, () => null);
  if (column !== '') return { ...rest, timeColumn: column };
  const interval = await ask(importQuestions.interval, isDuration);
  return { ...rest, intervalS: parseDuration(interval, COMMAND_TEXT.answer) };
}

function askColumnAgain(
  problem: LoggerFileProblem,
  options: Mutable,
  ask: Ask,
  why: string,
): Promise<Mutable> {
  if (problem.remedy?.includes('--time-column')) return askTime(options, ask, why);
  return ask(`${why}\n${importQuestions.temperatureColumn}`, notEmpty).then((column) => ({
    ...options,
    temperatureColumns: [column],
  }));
}

async function oneOf<Word extends string>(ask: Ask, question: string, words: readonly Word[]): Promise<Word> {
  const answer = await ask(question, (came) =>
    words.some((word) => word.toLowerCase() === came.toLowerCase()) ? null : importQuestions.oneOf(words),
  );
  return words.find((word) => word.toLowerCase() === answer.toLowerCase()) as Word;
}

const notEmpty = (answer: string): string | null => (answer === '' ? importQuestions.needed : null);

function isDuration(answer: string): string | null {
  try {
    return parseDuration(answer, COMMAND_TEXT.answer) > 0 ? null : importQuestions.above0;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
