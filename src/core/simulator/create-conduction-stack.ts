import { DwellwrightError } from '../DwellwrightError.ts';

/** One slab of a stack, lower face first. */
export interface StackLayer {
  readonly thicknessM: number;
  readonly conductivityWPerMK: number;
  /** Density times specific heat. */
  readonly heatCapacityJPerM3K: number;
  readonly cells: number;
}

/** What a face of the stack sees: a temperature behind a contact (or film) resistance. */
export interface StackFace {
  readonly temperatureC: number;
  readonly resistanceM2KPerW: number;
}

export interface ConductionStack {
  /** One step; both faces are taken as constant over it. */
  step(stepS: number, lower: StackFace, upper: StackFace): void;
  /** Mean heat flux into the stack during the latest step, W/m². */
  readonly lowerFluxWPerM2: number;
  readonly upperFluxWPerM2: number;
  /** Cell-centre temperatures, lower first. A view: copy what must last. */
  readonly cellsC: Float64Array;
  /** Temperature in the middle of the film between layer `index` and the next, °C. */
  betweenLayersC(index: number): number;
  setAllC(temperatureC: number): void;
}

/**
 * Transient heat conduction in one dimension through a stack of slabs with contact resistances between them:
 * finite volumes, Crank–Nicolson in time (second order in both), solved as a tridiagonal system.
 * Refuses an empty stack and sizes that are not positive and finite.
 */
export function createConductionStack(
  layers: readonly StackLayer[],
  filmResistancesM2KPerW: readonly number[],
  startC: number,
): ConductionStack {
  checkStack(layers, filmResistancesM2KPerW);
  const { capacity, halfResistance, lastCell } = cut(layers);
  const count = capacity.length;
  const film = new Float64Array(count);
  layers.forEach((_, index) => {
    if (index < layers.length - 1) film[lastCell[index]!] = filmResistancesM2KPerW[index]!;
  });
  const conductance = new Float64Array(count);
  for (let cell = 0; cell < count - 1; cell += 1) {
    conductance[cell] = 1 / (halfResistance[cell]! + film[cell]! + halfResistance[cell + 1]!);
  }
  const cellsC = new Float64Array(count).fill(startC);
  const upperRow = new Float64Array(count);
  const right = new Float64Array(count);
  let lowerFluxWPerM2 = 0;
  let upperFluxWPerM2 = 0;

  function step(stepS: number, lower: StackFace, upper: StackFace): void {
    const last = count - 1;
    const lowerG = 1 / (lower.resistanceM2KPerW + halfResistance[0]!);
    const upperG = 1 / (upper.resistanceM2KPerW + halfResistance[last]!);
    const firstBefore = cellsC[0]!;
    const lastBefore = cellsC[last]!;
    for (let cell = 0; cell < count; cell += 1) {
      const below = cell === 0 ? lowerG : conductance[cell - 1]!;
      const above = cell === last ? upperG : conductance[cell]!;
      const belowC = cell === 0 ? lower.temperatureC : cellsC[cell - 1]!;
      const aboveC = cell === last ? upper.temperatureC : cellsC[cell + 1]!;
      const own = cellsC[cell]!;
      const storage = capacity[cell]! / stepS;
      let diagonal = storage + 0.5 * (below + above);
      let known = storage * own + 0.5 * (below * (belowC - own) + above * (aboveC - own));
      if (cell === 0) known += 0.5 * below * belowC;
      else {
        // Forward sweep of the tridiagonal system, in step with building it.
        diagonal -= 0.5 * below * upperRow[cell - 1]!;
        known += 0.5 * below * right[cell - 1]!;
      }
      if (cell === last) known += 0.5 * above * aboveC;
      upperRow[cell] = (0.5 * above) / diagonal;
      right[cell] = known / diagonal;
    }
    cellsC[last] = right[last]!;
    for (let cell = last - 1; cell >= 0; cell -= 1) {
      cellsC[cell] = right[cell]! + upperRow[cell]! * cellsC[cell + 1]!;
    }
    lowerFluxWPerM2 = lowerG * (lower.temperatureC - 0.5 * (firstBefore + cellsC[0]!));
    upperFluxWPerM2 = upperG * (upper.temperatureC - 0.5 * (lastBefore + cellsC[last]!));
  }

  return {
    step,
    cellsC,
    get lowerFluxWPerM2() {
      return lowerFluxWPerM2;
    },
    get upperFluxWPerM2() {
      return upperFluxWPerM2;
    },
    betweenLayersC(index) {
      const cell = lastCell[index]!;
      const fluxUp = conductance[cell]! * (cellsC[cell]! - cellsC[cell + 1]!);
      return cellsC[cell]! - fluxUp * (halfResistance[cell]! + 0.5 * film[cell]!);
    },
    setAllC: (temperatureC) => void cellsC.fill(temperatureC),
  };
}

function cut(layers: readonly StackLayer[]) {
  const capacity: number[] = [];
  const halfResistance: number[] = [];
  const lastCell: number[] = [];
  for (const layer of layers) {
    const cellM = layer.thicknessM / layer.cells;
    for (let cell = 0; cell < layer.cells; cell += 1) {
      capacity.push(layer.heatCapacityJPerM3K * cellM);
      halfResistance.push(cellM / 2 / layer.conductivityWPerMK);
    }
    lastCell.push(capacity.length - 1);
  }
  return { capacity, halfResistance, lastCell };
}

function checkStack(layers: readonly StackLayer[], films: readonly number[]): void {
  const sizes = layers.flatMap((layer) => Object.values(layer) as number[]);
  const sound = layers.length > 0 && sizes.every((size) => size > 0 && Number.isFinite(size));
  if (!sound || films.length !== layers.length - 1 || !films.every((film) => film >= 0)) {
    throw new DwellwrightError(
      'simulator-stack',
      `createConductionStack requires layers of positive size and one film between each two, ` +
        `got ${layers.length} layers and ${films.length} films`,
    );
  }
}
