import { createInterface } from 'node:readline/promises';
import { ExchangeError } from '../../core/exchange/ExchangeError.ts';
import { exchangeRefusals } from '../../core/text/exchange-text.ts';

/** Asks one question and returns the trimmed answer; `accept` says what is wrong with an answer, or null. */
export type Ask = (question: string, accept: (answer: string) => string | null) => Promise<string>;

/**
 * Asks on the terminal, on standard error so that the result stays alone on standard output. Null where nobody can
 * answer: input or output is no terminal.
 */
export function terminalAsk(): Ask | null {
  if (!process.stdin.isTTY || !process.stderr.isTTY) return null;
  return async (question, accept) => {
    const terminal = createInterface({ input: process.stdin, output: process.stderr });
    const gone = new Promise<never>((_resolve, reject) => {
      terminal.once('close', () =>
        reject(new ExchangeError('import-unanswered', exchangeRefusals.unanswered(question))),
      );
      terminal.once('SIGINT', () => terminal.close());
    });
    // A question answered in time leaves this promise behind; its rejection at closing is nobody's failure.
    gone.catch(() => {});
    try {
      for (;;) {
        const answer = (await Promise.race([terminal.question(`${question} `), gone])).trim();
        const wrong = accept(answer);
        if (wrong === null) return answer;
        process.stderr.write(`  ${wrong}\n`);
      }
    } finally {
      terminal.close();
    }
  };
}
