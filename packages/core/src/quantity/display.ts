import type { QuantityKind, UnitSystem } from './model.ts';
import type { Unit } from './unit.ts';
import { unitFor } from './unit-table.ts';

/** Unit and decimals each kind is shown in. Barometers and manifold pressure (absolute) are inHg in US use, boost (gauge) psi. */
const SHOWN: Record<QuantityKind, Record<UnitSystem, [name: string, decimals: number]>> = {
  engineSpeed: { us: ['rpm', 0], si: ['rpm', 0] },
  sweepRate: { us: ['rpm/s', 0], si: ['rpm/s', 0] },
  torque: { us: ['lb-ft', 1], si: ['N·m', 1] },
  power: { us: ['hp', 1], si: ['kW', 1] },
  absolutePressure: { us: ['inHg', 2], si: ['kPa', 2] },
  gaugePressure: { us: ['psi', 1], si: ['kPa', 1] },
  pressureDifference: { us: ['psi', 2], si: ['kPa', 2] },
  temperature: { us: ['°F', 0], si: ['°C', 1] },
  temperatureDifference: { us: ['°F', 0], si: ['K', 1] },
  massFlow: { us: ['lb/h', 1], si: ['kg/h', 1] },
  volumeFlow: { us: ['cfm', 1], si: ['m³/h', 1] },
  length: { us: ['in', 3], si: ['mm', 2] },
  area: { us: ['in²', 2], si: ['cm²', 2] },
  volume: { us: ['in³', 2], si: ['cm³', 1] },
  mass: { us: ['lb', 2], si: ['kg', 3] },
  density: { us: ['lb/ft³', 4], si: ['kg/m³', 3] },
  speed: { us: ['ft/min', 0], si: ['m/s', 2] },
  momentOfInertia: { us: ['lb·ft²', 2], si: ['kg·m²', 3] },
  specificConsumption: { us: ['lb/(hp·h)', 3], si: ['g/(kW·h)', 0] },
  angle: { us: ['°', 1], si: ['°', 1] },
  ratio: { us: ['', 3], si: ['', 3] },
  time: { us: ['s', 2], si: ['s', 2] },
  voltage: { us: ['V', 1], si: ['V', 1] },
  frequency: { us: ['Hz', 1], si: ['Hz', 1] },
  springRate: { us: ['lb/in', 0], si: ['N/mm', 1] },
  force: { us: ['lbf', 0], si: ['N', 0] },
};

/** The unit a kind is shown in. */
export function displayUnit(kind: QuantityKind, system: UnitSystem): Unit {
  const [name] = SHOWN[kind][system];
  const unit = unitFor(name, kind);
  if (!unit) throw new Error(`no unit "${name}" of ${kind} in the table`);
  return unit;
}

/** Decimals a kind is shown with in its display unit. */
export function decimalsFor(kind: QuantityKind, system: UnitSystem): number {
  return SHOWN[kind][system][1];
}
