/** A row of the table of cycles, without its number. */
export interface CycleRow {
  cycle_id: string;
  assembly_name: string;
  press_name: string;
  recipe_version: number;
  closed_at: string;
  dwell_held_s: number;
  result: string;
  simulated: 0 | 1;
  cycle_json: string;
}
