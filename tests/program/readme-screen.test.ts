import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { rowText } from '../../src/core/chart/row-text.ts';
import { trialFrame } from '../../src/core/screen/trial-frame.ts';
import { trialView } from '../../src/core/screen/trial-view.ts';
import { scripted } from '../core/screen/scripted-trial.ts';

const file = join(import.meta.dirname, '..', '..', 'README.md');
const BLOCK = /<!-- screen:begin -->[\s\S]*<!-- screen:end -->/;

/** Made by the screen's own code; `UPDATE_README=1 npx vitest run … readme-screen` puts today's picture in. */
it('the picture in README is what the screen shows while a run heats', () => {
  const rows = trialFrame(trialView(scripted('heating').state, { columns: 96, rows: 27, ascii: false })).map(
    rowText,
  );
  const picture = rows.map((row) => row.trimEnd()).join('\n');
  const block = `<!-- screen:begin -->\n\n\`\`\`\n${picture}\n\`\`\`\n\n<!-- screen:end -->`;
  const before = readFileSync(file, 'utf8');
  if (process.env.UPDATE_README)
    writeFileSync(
      file,
      before.replace(BLOCK, () => block),
    );
  expect(readFileSync(file, 'utf8').match(BLOCK)?.[0]).toBe(block);
});
