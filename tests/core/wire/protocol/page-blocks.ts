import { readFileSync } from 'node:fs';

const PAGE = new URL('../../../../firmware-protocol.md', import.meta.url);

/** Lines of all code blocks of one kind on the page for firmware writers, exactly as printed there. */
export function pageBlocks(kind: string): string[] {
  const page = readFileSync(PAGE, 'utf8');
  const blocks = [...page.matchAll(/^```(\S+)\n([\s\S]*?)^```$/gm)];
  return blocks
    .filter((block) => block[1] === kind)
    .flatMap((block) => (block[2] ?? '').trimEnd().split('\n'));
}
