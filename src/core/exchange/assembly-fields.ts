import type { Assembly } from '../press/Press.ts';
import { type ExportField, field } from './ExportField.ts';

/** Fields of `export assemblies`, one row an assembly. */
export const ASSEMBLY_FIELDS: readonly ExportField<Assembly>[] = [
  field('assembly', 'assembly', (assembly) => assembly.name),
  field('ringOuterDiameterMm', 'outer diameter of the ring', (assembly) => assembly.ringOuterDiameterMm),
  field('ringInnerDiameterMm', 'inner diameter of the ring', (assembly) => assembly.ringInnerDiameterMm),
  field('carrier', 'carrier', (assembly) => assembly.carrier),
  field('targetC', 'bond-line target', (assembly) => assembly.targetC),
  field('holdS', 'hold', (assembly) => assembly.holdS),
  field(
    'netFacingLowPsi',
    'lowest net facing pressure wanted, where stated',
    (assembly) => assembly.netFacingPsi?.low ?? null,
  ),
  field(
    'netFacingHighPsi',
    'highest net facing pressure wanted, where stated',
    (assembly) => assembly.netFacingPsi?.high ?? null,
  ),
  field('adhesive', 'adhesive', (assembly) => assembly.adhesive),
  field(
    'dataSheetRevision',
    'revision of the adhesive’s data sheet',
    (assembly) => assembly.dataSheetRevision,
  ),
  field('highestDwellS', 'longest dwell allowed', (assembly) => assembly.highestDwellS),
  field('highestPeakC', 'highest bond-line temperature allowed', (assembly) => assembly.highestPeakC),
  field('leastRecoveryS', 'least recovery time between closings', (assembly) => assembly.leastRecoveryS),
  field(
    'cureActivationEnergyKjPerMol',
    'activation energy of the data sheet',
    (assembly) => assembly.cure?.activationEnergyKjPerMol ?? null,
  ),
  field(
    'cureReferenceC',
    'temperature that equivalent time is stated at',
    (assembly) => assembly.cure?.referenceC ?? null,
  ),
  field(
    'cureFromC',
    'lower end of what the data sheet holds for',
    (assembly) => assembly.cure?.rangeC.from ?? null,
  ),
  field('cureToC', 'upper end of it', (assembly) => assembly.cure?.rangeC.to ?? null),
];
