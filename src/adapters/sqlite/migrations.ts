export interface Migration {
  readonly name: string;
  readonly sql: string;
}

/** Refuses changes to a table whose rows are never to be changed. */
const neverChanged = (table: string): string => `
  CREATE TRIGGER ${table}_never_updated BEFORE UPDATE ON ${table}
  BEGIN SELECT RAISE(ABORT, '${table} is never updated'); END;
  CREATE TRIGGER ${table}_never_deleted BEFORE DELETE ON ${table}
  BEGIN SELECT RAISE(ABORT, '${table} is never deleted from'); END;`;

/** Append only: a change that was ever released is never edited, moved or removed; its number is its place in this list. */
export const MIGRATIONS: readonly Migration[] = [
  {
    name: '001-recordings',
    sql: `
  CREATE TABLE recordings (
    recording_row INTEGER PRIMARY KEY AUTOINCREMENT,
    recording_id TEXT NOT NULL UNIQUE CHECK (recording_id <> ''),
    trial_id TEXT,
    simulated INTEGER NOT NULL CHECK (simulated IN (0, 1)),
    head_text TEXT NOT NULL,
    closing_text TEXT
  ) STRICT;
  CREATE INDEX recordings_by_trial ON recordings (trial_id);
  CREATE TRIGGER recordings_only_closed_once BEFORE UPDATE ON recordings
  WHEN old.closing_text IS NOT NULL OR new.closing_text IS NULL
    OR new.recording_row <> old.recording_row OR new.recording_id <> old.recording_id
    OR new.trial_id IS NOT old.trial_id OR new.simulated <> old.simulated OR new.head_text <> old.head_text
  BEGIN SELECT RAISE(ABORT, 'recordings is never updated but for its closing'); END;
  CREATE TRIGGER recordings_never_deleted BEFORE DELETE ON recordings
  BEGIN SELECT RAISE(ABORT, 'recordings is never deleted from'); END;

  CREATE TABLE recording_blocks (
    block_id INTEGER PRIMARY KEY AUTOINCREMENT,
    recording_row INTEGER NOT NULL REFERENCES recordings,
    first_entry INTEGER NOT NULL CHECK (first_entry >= 0),
    entry_count INTEGER NOT NULL CHECK (entry_count > 0),
    body_text TEXT NOT NULL,
    UNIQUE (recording_row, first_entry)
  ) STRICT;
  CREATE TRIGGER recording_blocks_only_while_open BEFORE INSERT ON recording_blocks
  WHEN (SELECT closing_text FROM recordings WHERE recording_row = new.recording_row) IS NOT NULL
  BEGIN SELECT RAISE(ABORT, 'a closed recording takes no more entries'); END;
  ${neverChanged('recording_blocks')}`,
  },
  {
    name: '002-presses-and-assemblies',
    sql: `
  CREATE TABLE presses (
    press_row INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL UNIQUE CHECK (name <> ''),
    ram_bore_mm REAL,
    ram_rod_mm REAL,
    rams INTEGER NOT NULL,
    gauge_division_psi REAL,
    upper_platen_set_point_c REAL,
    lower_platen_set_point_c REAL,
    timer_starts_at TEXT NOT NULL CHECK (timer_starts_at IN ('button', 'closing')),
    timer_offset_s REAL NOT NULL,
    timer_step_s REAL NOT NULL,
    CHECK ((upper_platen_set_point_c IS NULL) = (lower_platen_set_point_c IS NULL))
  ) STRICT;

  CREATE TABLE assemblies (
    assembly_row INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL UNIQUE CHECK (name <> ''),
    ring_outer_diameter_mm REAL,
    ring_inner_diameter_mm REAL,
    carrier TEXT,
    target_c REAL NOT NULL,
    hold_s REAL NOT NULL,
    adhesive TEXT,
    data_sheet_revision TEXT,
    highest_dwell_s REAL,
    highest_peak_c REAL,
    least_recovery_s REAL
  ) STRICT;`,
  },
  {
    name: '003-trials-and-runs',
    sql: `
  CREATE TABLE trials (
    trial_row INTEGER PRIMARY KEY AUTOINCREMENT,
    trial_id TEXT NOT NULL UNIQUE CHECK (trial_id <> ''),
    assembly_name TEXT NOT NULL,
    press_name TEXT NOT NULL,
    started_at TEXT NOT NULL,
    closed_at TEXT,
    simulated INTEGER NOT NULL CHECK (simulated IN (0, 1))
  ) STRICT;
  CREATE TRIGGER trials_never_deleted BEFORE DELETE ON trials
  BEGIN SELECT RAISE(ABORT, 'trials is never deleted from'); END;

  CREATE TABLE run_results (
    recording_row INTEGER NOT NULL REFERENCES recordings,
    run_number INTEGER NOT NULL CHECK (run_number >= 1),
    rule_version INTEGER NOT NULL CHECK (rule_version >= 1),
    result_json TEXT NOT NULL CHECK (json_valid(result_json)),
    PRIMARY KEY (recording_row, run_number)
  ) STRICT;

  CREATE TABLE run_decisions (
    decision_id INTEGER PRIMARY KEY AUTOINCREMENT,
    recording_row INTEGER NOT NULL REFERENCES recordings,
    run_number INTEGER NOT NULL CHECK (run_number >= 1),
    kind TEXT NOT NULL CHECK (kind IN ('set-aside', 'taken-in', 'automatic')),
    reason TEXT NOT NULL,
    decided_at TEXT NOT NULL
  ) STRICT;
  CREATE INDEX run_decisions_by_run ON run_decisions (recording_row, run_number, decision_id);
  ${neverChanged('run_decisions')}`,
  },
  {
    name: '004-recipes-and-settings',
    sql: `
  CREATE TABLE recipes (
    recipe_row INTEGER PRIMARY KEY AUTOINCREMENT,
    assembly_name TEXT NOT NULL CHECK (assembly_name <> ''),
    press_name TEXT NOT NULL CHECK (press_name <> ''),
    version INTEGER NOT NULL CHECK (version >= 1),
    accepted_at TEXT NOT NULL,
    dwell_s REAL NOT NULL,
    simulated INTEGER NOT NULL CHECK (simulated IN (0, 1)),
    recipe_json TEXT NOT NULL CHECK (json_valid(recipe_json)),
    UNIQUE (assembly_name, press_name, version)
  ) STRICT;
  ${neverChanged('recipes')}

  CREATE TABLE settings (
    key TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL
  ) STRICT;`,
  },
  {
    name: '005-imports-and-layouts',
    sql: `
  CREATE TABLE imports (
    import_id INTEGER PRIMARY KEY AUTOINCREMENT,
    recording_row INTEGER NOT NULL REFERENCES recordings,
    file_sha256 TEXT NOT NULL CHECK (length(file_sha256) = 64),
    file_name TEXT NOT NULL,
    read_as TEXT NOT NULL,
    imported_at TEXT NOT NULL,
    UNIQUE (file_sha256, recording_row)
  ) STRICT;
  ${neverChanged('imports')}

  CREATE TABLE logger_layouts (
    name TEXT NOT NULL PRIMARY KEY CHECK (name <> ''),
    options_json TEXT NOT NULL CHECK (json_valid(options_json)),
    saved_at TEXT NOT NULL
  ) STRICT;`,
  },
  {
    name: '006-probes-and-cure',
    sql: `
  CREATE TABLE probes (
    probe_row INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL CHECK (name <> ''),
    saved_at TEXT NOT NULL,
    probe_json TEXT NOT NULL CHECK (json_valid(probe_json))
  ) STRICT;
  CREATE INDEX probes_by_name ON probes (name, probe_row);
  ${neverChanged('probes')}

  ALTER TABLE assemblies ADD COLUMN activation_energy_kj_per_mol REAL;
  ALTER TABLE assemblies ADD COLUMN cure_reference_c REAL;
  ALTER TABLE assemblies ADD COLUMN cure_from_c REAL;
  ALTER TABLE assemblies ADD COLUMN cure_to_c REAL;`,
  },
  {
    // Derived from the lines, to be made anew by another decode version; kept only to analyse again fast.
    name: '007-kept-traces',
    sql: `
  CREATE TABLE kept_traces (
    recording_row INTEGER PRIMARY KEY REFERENCES recordings (recording_row),
    decode_version INTEGER NOT NULL,
    trace BLOB NOT NULL
  ) STRICT;`,
  },
  {
    name: '008-cycles',
    sql: `
  CREATE TABLE cycles (
    cycle_row INTEGER PRIMARY KEY AUTOINCREMENT,
    cycle_id TEXT NOT NULL UNIQUE CHECK (cycle_id <> ''),
    assembly_name TEXT NOT NULL CHECK (assembly_name <> ''),
    press_name TEXT NOT NULL CHECK (press_name <> ''),
    recipe_version INTEGER NOT NULL CHECK (recipe_version >= 1),
    closed_at TEXT NOT NULL,
    dwell_held_s REAL NOT NULL CHECK (dwell_held_s >= 0),
    result TEXT NOT NULL,
    simulated INTEGER NOT NULL CHECK (simulated IN (0, 1)),
    cycle_json TEXT NOT NULL CHECK (json_valid(cycle_json))
  ) STRICT;
  CREATE INDEX cycles_by_press ON cycles (press_name, assembly_name, cycle_row);
  ${neverChanged('cycles')}`,
  },
  {
    // Renewed while a closing runs, so neither kept for ever nor merged: its own program logs it at its next start.
    name: '009-closings-under-way',
    sql: `
  CREATE TABLE closings_under_way (
    closing_row INTEGER PRIMARY KEY AUTOINCREMENT,
    cycle_id TEXT NOT NULL UNIQUE CHECK (cycle_id <> ''),
    closing_json TEXT NOT NULL CHECK (json_valid(closing_json))
  ) STRICT;`,
  },
  {
    // A kept trace belongs to the closing line it was decoded under, and is proved with it each time it is read.
    name: '010-kept-traces-proved',
    sql: `
  DROP TABLE kept_traces;
  CREATE TABLE kept_traces (
    recording_row INTEGER PRIMARY KEY REFERENCES recordings (recording_row),
    decode_version INTEGER NOT NULL,
    trace BLOB NOT NULL,
    proof BLOB NOT NULL CHECK (length(proof) = 32)
  ) STRICT;`,
  },
  {
    // A version may be withdrawn more than once where two laptops did so; the first statement is the one shown.
    name: '011-recipe-withdrawals',
    sql: `
  CREATE TABLE recipe_withdrawals (
    withdrawal_row INTEGER PRIMARY KEY AUTOINCREMENT,
    assembly_name TEXT NOT NULL,
    press_name TEXT NOT NULL,
    version INTEGER NOT NULL,
    withdrawn_at TEXT NOT NULL,
    initials TEXT NOT NULL CHECK (initials <> ''),
    reason TEXT NOT NULL CHECK (reason <> ''),
    UNIQUE (assembly_name, press_name, version, withdrawn_at, initials, reason),
    FOREIGN KEY (assembly_name, press_name, version) REFERENCES recipes (assembly_name, press_name, version)
  ) STRICT;
  ${neverChanged('recipe_withdrawals')}`,
  },
  {
    // SHA-256 of the JSON beside it; null in rows of earlier programs.
    name: '012-results-proved',
    sql: `
  ALTER TABLE run_results ADD COLUMN proof TEXT CHECK (length(proof) = 64);
  ALTER TABLE recipes ADD COLUMN proof TEXT CHECK (length(proof) = 64);
  ALTER TABLE cycles ADD COLUMN proof TEXT CHECK (length(proof) = 64);`,
  },
  {
    // Both or none: the pressure that a ring wants; without it common practice holds.
    name: '013-net-facing-pressure',
    sql: `
  ALTER TABLE assemblies ADD COLUMN net_facing_low_psi REAL CHECK (net_facing_low_psi > 0);
  ALTER TABLE assemblies ADD COLUMN net_facing_high_psi REAL CHECK (net_facing_high_psi >= net_facing_low_psi);`,
  },
];
