import type { PlainValues } from './PlainField.ts';

type Shape = Pick<PlainValues, 'separator' | 'decimal'> & { readonly labels: readonly (string | null)[] };

function hasDecimals(values: PlainValues): boolean {
  return values.fields.some((field) => field.content.kind === 'number' && field.content.decimals > 0);
}

/**
 * Whether a line has the shape of a layout: as many values, separated alike, under the same labels.
 * The decimal sign is compared only where the line shows one.
 */
export function samePlainShape(values: PlainValues, shape: Shape): boolean {
  return (
    values.separator === shape.separator &&
    values.fields.length === shape.labels.length &&
    (values.decimal === shape.decimal || !hasDecimals(values)) &&
    values.fields.every((field, at) => field.label === shape.labels[at])
  );
}
