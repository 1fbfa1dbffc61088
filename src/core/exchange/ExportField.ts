/** A value of an exported field; null where there is none. */
export type ExportValue = string | number | boolean | null | readonly string[];

/** One exported field: the name carries the unit (`S` seconds, `C` °C, `CPerS` °C/s). */
export interface ExportField<Row> {
  readonly name: string;
  /** What it holds, for the list of fields. */
  readonly about: string;
  readonly value: (row: Row) => ExportValue;
}

/** Takes the type of its rows from where it is used. */
export const field = <Row>(
  name: string,
  about: string,
  value: (row: Row) => ExportValue,
): ExportField<Row> => ({ name, about, value });
