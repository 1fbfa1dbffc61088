import type Database from 'better-sqlite3';
import type { Assembly } from '../../core/press/Press.ts';
import type { Store } from '../../core/store/Store.ts';
import { finite, finiteOrNull } from './finite.ts';

interface Row {
  name: string;
  ring_outer_diameter_mm: number | null;
  ring_inner_diameter_mm: number | null;
  carrier: string | null;
  target_c: number;
  hold_s: number;
  adhesive: string | null;
  data_sheet_revision: string | null;
  highest_dwell_s: number | null;
  highest_peak_c: number | null;
  least_recovery_s: number | null;
  activation_energy_kj_per_mol: number | null;
  cure_reference_c: number | null;
  cure_from_c: number | null;
  cure_to_c: number | null;
  net_facing_low_psi: number | null;
  net_facing_high_psi: number | null;
}

/** Assemblies by name; saving one again replaces what is known of it. */
export function assemblyTable(database: Database.Database): Pick<Store, 'saveAssembly' | 'assemblies'> {
  const save = database.prepare<[Row]>(`
    INSERT INTO assemblies (name, ring_outer_diameter_mm, ring_inner_diameter_mm, carrier, target_c, hold_s,
      adhesive, data_sheet_revision, highest_dwell_s, highest_peak_c, least_recovery_s,
      activation_energy_kj_per_mol, cure_reference_c, cure_from_c, cure_to_c,
      net_facing_low_psi, net_facing_high_psi)
    VALUES (@name, @ring_outer_diameter_mm, @ring_inner_diameter_mm, @carrier, @target_c, @hold_s,
      @adhesive, @data_sheet_revision, @highest_dwell_s, @highest_peak_c, @least_recovery_s,
      @activation_energy_kj_per_mol, @cure_reference_c, @cure_from_c, @cure_to_c,
      @net_facing_low_psi, @net_facing_high_psi)
    ON CONFLICT (name) DO UPDATE SET ring_outer_diameter_mm = excluded.ring_outer_diameter_mm,
      ring_inner_diameter_mm = excluded.ring_inner_diameter_mm, carrier = excluded.carrier,
      target_c = excluded.target_c, hold_s = excluded.hold_s, adhesive = excluded.adhesive,
      data_sheet_revision = excluded.data_sheet_revision, highest_dwell_s = excluded.highest_dwell_s,
      highest_peak_c = excluded.highest_peak_c, least_recovery_s = excluded.least_recovery_s,
      activation_energy_kj_per_mol = excluded.activation_energy_kj_per_mol,
      cure_reference_c = excluded.cure_reference_c, cure_from_c = excluded.cure_from_c, cure_to_c = excluded.cure_to_c,
      net_facing_low_psi = excluded.net_facing_low_psi, net_facing_high_psi = excluded.net_facing_high_psi`);
  const all = database.prepare<[], Row>('SELECT * FROM assemblies ORDER BY assembly_row');
  return {
    saveAssembly: (assembly) => {
      save.run(toRow(assembly));
    },
    assemblies: () => all.all().map(fromRow),
  };
}

function toRow(assembly: Assembly): Row {
  return {
    name: assembly.name,
    ring_outer_diameter_mm: finiteOrNull('ring outer diameter', assembly.ringOuterDiameterMm),
    ring_inner_diameter_mm: finiteOrNull('ring inner diameter', assembly.ringInnerDiameterMm),
    carrier: assembly.carrier,
    target_c: finite('target', assembly.targetC),
    hold_s: finite('hold', assembly.holdS),
    adhesive: assembly.adhesive,
    data_sheet_revision: assembly.dataSheetRevision,
    highest_dwell_s: finiteOrNull('highest dwell', assembly.highestDwellS),
    highest_peak_c: finiteOrNull('highest peak', assembly.highestPeakC),
    least_recovery_s: finiteOrNull('least recovery time', assembly.leastRecoveryS),
    activation_energy_kj_per_mol: finiteOrNull(
      'activation energy',
      assembly.cure?.activationEnergyKjPerMol ?? null,
    ),
    cure_reference_c: finiteOrNull('cure reference temperature', assembly.cure?.referenceC ?? null),
    cure_from_c: finiteOrNull('cure range', assembly.cure?.rangeC.from ?? null),
    cure_to_c: finiteOrNull('cure range', assembly.cure?.rangeC.to ?? null),
    net_facing_low_psi: finiteOrNull('net facing pressure', assembly.netFacingPsi?.low ?? null),
    net_facing_high_psi: finiteOrNull('net facing pressure', assembly.netFacingPsi?.high ?? null),
  };
}

function fromRow(row: Row): Assembly {
  return {
    name: row.name,
    ringOuterDiameterMm: row.ring_outer_diameter_mm,
    ringInnerDiameterMm: row.ring_inner_diameter_mm,
    carrier: row.carrier,
    targetC: row.target_c,
    holdS: row.hold_s,
    adhesive: row.adhesive,
    dataSheetRevision: row.data_sheet_revision,
    highestDwellS: row.highest_dwell_s,
    highestPeakC: row.highest_peak_c,
    leastRecoveryS: row.least_recovery_s,
    ...cureOf(row),
    ...netFacingOf(row),
  };
}

function netFacingOf({
  net_facing_low_psi: low,
  net_facing_high_psi: high,
}: Row): Pick<Assembly, 'netFacingPsi'> {
  return low === null || high === null ? {} : { netFacingPsi: { low, high } };
}

function cureOf(row: Row): Pick<Assembly, 'cure'> {
  const {
    activation_energy_kj_per_mol: energy,
    cure_reference_c: referenceC,
    cure_from_c: from,
    cure_to_c: to,
  } = row;
  if (energy === null || referenceC === null || from === null || to === null) return {};
  return { cure: { activationEnergyKjPerMol: energy, referenceC, rangeC: { from, to } } };
}
