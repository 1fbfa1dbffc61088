import { DwellwrightError } from '../DwellwrightError.ts';
import { neutralise } from '../text/neutralise.ts';

export type LoggerFileProblemCode =
  | 'logger-file-empty'
  | 'logger-file-not-text'
  | 'logger-file-too-large'
  | 'logger-file-no-rows'
  | 'logger-file-column-unknown'
  | 'logger-file-time-unknown'
  | 'logger-file-time-unit-unknown'
  | 'logger-file-temperature-unknown'
  | 'logger-file-channel-per-row'
  | 'logger-file-time-range'
  | 'logger-file-unit-unknown'
  | 'logger-file-unit-contradicted'
  | 'logger-file-option';

/** Why a file of another logger cannot be used as it stands; `remedy` names the options to add. */
export class LoggerFileProblem extends DwellwrightError {
  override readonly name = 'LoggerFileProblem';
  override readonly code: LoggerFileProblemCode;

  constructor(code: LoggerFileProblemCode, message: string, remedy: string) {
    super(code, message, { remedy });
    this.code = code;
  }

  /** The same with the file's name before it. */
  inFile(name: string): LoggerFileProblem {
    return new LoggerFileProblem(this.code, `${neutralise(name)}: ${this.message}`, this.remedy ?? '');
  }
}
