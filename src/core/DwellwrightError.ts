/**
 * Base of every error of this project that a person may see. The message says what failed, what was
 * expected, what came; `remedy` says what to do. Code decides on `code`, never on the text.
 */
export class DwellwrightError extends Error {
  override readonly name: string = 'DwellwrightError';
  readonly code: string;
  /** Exit code of a command that ends with this error. */
  readonly exitCode: 1 | 2;
  readonly remedy: string | null;

  constructor(
    code: string,
    message: string,
    options: { readonly remedy?: string; readonly exitCode?: 1 | 2; readonly cause?: unknown } = {},
  ) {
    super(message, options.cause === undefined ? undefined : { cause: options.cause });
    this.code = code;
    this.remedy = options.remedy ?? null;
    this.exitCode = options.exitCode ?? 2;
  }
}
