import { spawnSync } from 'node:child_process';

/** Poppler's programs (Debian: poppler-utils) read PDFs in tests. Without them such tests are skipped and say so; on CI they fail. */
const absent = spawnSync('pdftotext', ['-v']).error !== undefined;
export const poppler = {
  missing: absent && !process.env.CI,
  why: absent ? ' (needs poppler-utils, which is not installed)' : '',
};
