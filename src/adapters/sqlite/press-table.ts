import type Database from 'better-sqlite3';
import type { Press } from '../../core/press/Press.ts';
import type { Store } from '../../core/store/Store.ts';
import { finite, finiteOrNull } from './finite.ts';

interface Row {
  name: string;
  ram_bore_mm: number | null;
  ram_rod_mm: number | null;
  rams: number;
  gauge_division_psi: number | null;
  upper_platen_set_point_c: number | null;
  lower_platen_set_point_c: number | null;
  timer_starts_at: Press['timerStartsAt'];
  timer_offset_s: number;
  timer_step_s: number;
}

/** Presses by name; saving one again replaces what is known of it. */
export function pressTable(database: Database.Database): Pick<Store, 'savePress' | 'presses'> {
  const save = database.prepare<[Row]>(`
    INSERT INTO presses (name, ram_bore_mm, ram_rod_mm, rams, gauge_division_psi, upper_platen_set_point_c,
      lower_platen_set_point_c, timer_starts_at, timer_offset_s, timer_step_s)
    VALUES (@name, @ram_bore_mm, @ram_rod_mm, @rams, @gauge_division_psi, @upper_platen_set_point_c,
      @lower_platen_set_point_c, @timer_starts_at, @timer_offset_s, @timer_step_s)
    ON CONFLICT (name) DO UPDATE SET ram_bore_mm = excluded.ram_bore_mm, ram_rod_mm = excluded.ram_rod_mm,
      rams = excluded.rams, gauge_division_psi = excluded.gauge_division_psi,
      upper_platen_set_point_c = excluded.upper_platen_set_point_c,
      lower_platen_set_point_c = excluded.lower_platen_set_point_c, timer_starts_at = excluded.timer_starts_at,
      timer_offset_s = excluded.timer_offset_s, timer_step_s = excluded.timer_step_s`);
  const all = database.prepare<[], Row>('SELECT * FROM presses ORDER BY press_row');
  return {
    savePress: (press) => {
      save.run(toRow(press));
    },
    presses: () => all.all().map(fromRow),
  };
}

function toRow(press: Press): Row {
  return {
    name: press.name,
    ram_bore_mm: finiteOrNull('ram bore', press.ramBoreMm),
    ram_rod_mm: finiteOrNull('ram rod', press.ramRodMm),
    rams: finite('number of rams', press.rams),
    gauge_division_psi: finiteOrNull('gauge division', press.gaugeDivisionPsi),
    upper_platen_set_point_c: finiteOrNull('upper platen set point', press.platenSetPointC?.upper ?? null),
    lower_platen_set_point_c: finiteOrNull('lower platen set point', press.platenSetPointC?.lower ?? null),
    timer_starts_at: press.timerStartsAt,
    timer_offset_s: finite('timer offset', press.timerOffsetS),
    timer_step_s: finite('timer step', press.timerStepS),
  };
}

function fromRow(row: Row): Press {
  const upper = row.upper_platen_set_point_c;
  const lower = row.lower_platen_set_point_c;
  return {
    name: row.name,
    ramBoreMm: row.ram_bore_mm,
    ramRodMm: row.ram_rod_mm,
    rams: row.rams,
    gaugeDivisionPsi: row.gauge_division_psi,
    platenSetPointC: upper === null || lower === null ? null : { upper, lower },
    timerStartsAt: row.timer_starts_at,
    timerOffsetS: row.timer_offset_s,
    timerStepS: row.timer_step_s,
  };
}
