/** The fields of one export, a line each. */
export function fieldLines(
  what: string,
  fields: readonly { readonly name: string; readonly about: string }[],
): readonly string[] {
  const width = Math.max(...fields.map(({ name }) => name.length));
  return [`${what}:`, ...fields.map(({ name, about }) => `  ${name.padEnd(width)}  ${about}`)];
}
