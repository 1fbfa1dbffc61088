const LABEL =
  /(^|[\s,;|])((?!(?:deg )?[CFK] )[A-Za-z_][\w .#]{0,30}?) ?[:=] ?(?=[-+.\d]|nan\b|null\b|open\b|err)/gi;

/** No row that names its values is longer; a longer line is left as it is. */
const LONGEST = 2000;

function opened(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/[{}[\]"]/g, ' ')
    .replace(/->|=>/g, ' ');
}

/**
 * A row that names its values, made a plain row: `[10:00:00] T1=21.5 C T2=22.0 C` becomes
 * `10:00:00 21.5C 22.0C`, `{"t":0.5,"temp":20.5}` becomes `0.5,20.5`.
 */
export function unlabelled(text: string): string {
  if (text.length > LONGEST) return text;
  return opened(text)
    .replace(LABEL, '$1')
    .replace(/(\d)[ \t]+((?:[°º]|deg)? ?[CFK])(?=$|[\s,;|])/gi, '$1$2')
    .trim();
}

/** The names in such a row, in order. */
export function labelsOf(text: string): readonly string[] {
  if (text.length > LONGEST) return [];
  return [...opened(text).matchAll(LABEL)].map((found) => (found[2] ?? '').trim());
}
