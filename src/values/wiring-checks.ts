import type { Lighting, Supply, WirePair, Wiring } from '../lighting/types.ts';
import { SELV_VOLTS, classTwo, touchVolts } from '../lighting/index.ts';
import { type Check, type Quantities, type Quantity, atMost } from './check.ts';

type Wired = Lighting & { readonly wiring: Wiring };

export interface WiringLimits {
  /** Shares of the rated voltage and of a supply's rated power. */
  readonly greatestDrop: number;
  readonly supplyShare: number;
  readonly largestSupply: number;
  readonly wet: boolean;
}

const greatest = <T>(list: readonly T[], measure: (one: T) => number): T | undefined =>
  list.reduce<T | undefined>((best, one) => (best === undefined || measure(one) > measure(best) ? one : best), undefined);

/** What the wiring must keep to. Limits of voltage and of Class 2 are cautions: whether they apply is for local code. */
export function wiringChecks(lighting: Wired, limits: WiringLimits): Check[] {
  return [dropCheck(lighting, limits), feedCheck(lighting), ...wireChecks(lighting.wiring), ...supplyChecks(lighting, limits), ...voltageChecks(lighting, limits)];
}

function dropCheck({ strip, runs, wiring: { drops } }: Wired, { greatestDrop }: WiringLimits): Check {
  const worst = greatest(drops.map((_, k) => k), (k) => drops[k]!);
  const at = worst === undefined ? undefined : runs[worst]!.feeds[0]!.at;
  return atMost({
    check: 'voltage-drop', subject: `Most voltage lost in wire and strip (run ${(worst ?? 0) + 1})`, value: worst === undefined ? 0 : drops[worst]!, limit: greatestDrop * strip.volts, unit: 'V', ...(at && { at }),
    advice: 'Its far end will be darker: bring the supply nearer, take thicker wire, or make shorter runs.',
  }, 'caution');
}

function feedCheck({ strip, wiring: { wires } }: Wired): Check {
  const worst = greatest(wires.filter(({ kind }) => kind === 'feed'), ({ amps }) => amps);
  return atMost({
    check: 'strip-current', subject: 'Greatest current from one feed into the strip', value: worst?.amps ?? 0, limit: strip.greatestCurrent * (1 + 1e-9), unit: 'A', ...(worst && { at: worst.to }),
    advice: 'The strip\'s rails overheat: make shorter runs.',
  });
}

function wireChecks({ supplies, wires }: Wiring): Check[] {
  const share = ({ amps, size }: WirePair) => amps / size.ampacity;
  const loaded = greatest(wires, share);
  const thinnest = (supply: Supply) => Math.min(...wires.filter(({ run }) => supply.runs.includes(run)).map(({ size }) => size.ampacity));
  const fused = greatest(supplies, (supply) => supply.fuse / thinnest(supply));
  return [
    atMost({ check: 'wire-current', subject: `Greatest current in a wire of ${loaded?.size.name ?? 'no size'}`, value: loaded?.amps ?? 0, limit: loaded?.size.ampacity ?? 0, unit: 'A', ...(loaded && { at: loaded.to }), advice: 'Take thicker wire or shorter runs.' }),
    atMost({ check: 'fuse', subject: 'Fuse at a supply, for the thinnest wire behind it', value: fused?.fuse ?? 0, limit: fused ? thinnest(fused) : 0, unit: 'A', ...(fused && { at: fused.at }), advice: 'Take smaller supplies or thicker wire: the fuse must blow before the wire is too hot.' }),
  ];
}

function supplyChecks({ strip, wiring: { supplies } }: Wired, { supplyShare, largestSupply }: WiringLimits): Check[] {
  const loaded = greatest(supplies, ({ watts, ratedWatts }) => watts / ratedWatts);
  const largest = greatest(supplies, ({ ratedWatts }) => ratedWatts);
  const place = largest && { at: largest.at };
  return [
    atMost({ check: 'supply-load', subject: 'Largest share of a supply\'s rated power that is taken', value: loaded ? loaded.watts / loaded.ratedWatts : 0, limit: supplyShare * (1 + 1e-9), unit: 'ratio', ...(loaded && { at: loaded.at }), advice: 'Take a larger supply or more of them.' }),
    atMost({ check: 'supply-size', subject: 'Largest supply', value: largest?.ratedWatts ?? 0, limit: largestSupply, unit: 'W', ...place, advice: 'One run alone takes more: make shorter runs.' }),
    atMost({
      check: 'class-2', subject: 'Largest supply, for Class 2', value: largest?.ratedWatts ?? 0, limit: classTwo(strip.volts).voltAmps, unit: 'VA', ...place,
      advice: 'Above this it is no Class 2 circuit (NEC chapter 9 table 11(B)): take smaller supplies, or let a licensed person choose another wiring method.',
    }, 'caution'),
  ];
}

function voltageChecks({ strip: { volts } }: Wired, { wet }: WiringLimits): Check[] {
  return [
    atMost({ check: 'extra-low-voltage', subject: 'Voltage, for separated extra-low voltage', value: volts, limit: SELV_VOLTS, unit: 'V', advice: 'This is no extra-low voltage (IEC 61140): a licensed person must plan and do it.' }, 'caution'),
    atMost({ check: 'touch-voltage', subject: `Voltage of parts that may be touched, ${wet ? 'wet' : 'dry'}`, value: volts, limit: touchVolts(wet), unit: 'V', advice: 'No bare part may be within reach (IEC 60364-4-41).' }, 'caution'),
  ];
}

/** Supplies and their power, wire by size. */
export function wiringQuantities({ wiring: { supplies, wires } }: Wired): Quantities {
  const lengths = new Map<string, number>();
  for (const { size, length } of wires) lengths.set(size.name, (lengths.get(size.name) ?? 0) + length);
  return {
    supplies: { value: supplies.length, unit: 'count' },
    supplyPower: { value: supplies.reduce((sum, { ratedWatts }) => sum + ratedWatts, 0), unit: 'W' },
    ...Object.fromEntries([...lengths].map(([name, value]): [string, Quantity] => [`wirePair${name.replace('²', '2').replace(/\s/g, '')}`, { value, unit: 'mm' }])),
  };
}
