import { leastRadius, pathEnd, pathLength } from '../geometry/index.ts';
import type { LitPiece, Lighting } from '../lighting/types.ts';
import type { Layout } from '../lighting/layout/plan-layout.ts';
import { stripLength } from '../lighting/strip-length.ts';
import { roomOf } from '../lighting/tube.ts';
import type { Channel } from '../machining/job/channel.ts';
import { type Check, type Finding, type Quantities, amount, atMost, atLeast } from './check.ts';

/** Straighter than a kilometre's radius counts as straight, so that the value stays a number. */
const STRAIGHT = 1e6;

const piecesOf = ({ runs }: Pick<Lighting, 'runs'>): readonly LitPiece[] => runs.flatMap(({ pieces }) => pieces);

/** What a layout must keep to: room, bends, current of a run, stretches without light, strokes too short. */
export function layoutChecks({ lighting, currentLimit }: Layout, channel: Channel, greatestDark: number): Check[] {
  return [...roomChecks(lighting, channel), ...bendChecks(lighting), currentCheck(lighting, currentLimit), darkCheck(lighting, greatestDark), shortCheck(lighting)];
}

function roomChecks({ strip, tube }: Lighting, channel: Channel): Check[] {
  const { across, deep } = roomOf(tube);
  const room = strip.lies === 'flat' ? across : deep;
  return [
    atMost({ check: 'tube-in-groove', subject: 'Tube across, in the groove', value: tube.width, limit: channel.width, unit: 'mm', advice: 'Widen the groove or take a narrower tube.' }),
    atMost({ check: 'strip-in-tube', subject: `Strip ${strip.lies}, in the tube`, value: strip.width, limit: room, unit: 'mm', advice: 'Take a wider tube or a narrower strip.' }),
  ];
}

function bendChecks(lighting: Lighting): Check[] {
  const { strip, tube } = lighting;
  const pieces = piecesOf(lighting);
  return [
    bendCheck(pieces, ({ lit }) => lit, { check: 'bend-radius-strip', subject: `Tightest bend of the strip, ${strip.lies}`, limit: strip.leastBend, advice: 'Round this place, make the lettering wider, or part the strip there.' }),
    bendCheck(pieces, ({ path }) => path, { check: 'bend-radius-tube', subject: 'Tightest bend of the tube', limit: tube.leastBend, advice: 'Round this place, make the lettering wider, or part the tube there.' }),
  ];
}

function bendCheck(pieces: readonly LitPiece[], line: (piece: LitPiece) => LitPiece['path'], about: Pick<Finding, 'check' | 'subject' | 'limit' | 'advice'>): Check {
  const [tightest] = pieces.map((piece) => leastRadius(line(piece))).filter(({ radius }) => radius < STRAIGHT).sort((a, b) => a.radius - b.radius);
  const check = atLeast({ ...about, value: tightest?.radius ?? STRAIGHT, unit: 'mm', ...(tightest && { at: tightest.at }) }, 'caution');
  return tightest ? check : { ...check, says: `${about.subject}: none, all is straight.` };
}

function currentCheck({ runs }: Lighting, limit: number): Check {
  const greatest = runs.reduce<Lighting['runs'][number] | undefined>((most, run) => (run.amps > (most?.amps ?? 0) ? run : most), undefined);
  const at = greatest?.pieces[0]?.path.start;
  return atMost({
    check: 'run-current', subject: `Greatest current of a run${greatest ? ` (run ${runs.indexOf(greatest) + 1})` : ''}`, value: greatest?.amps ?? 0, limit: limit * (1 + 1e-9), unit: 'A', ...(at && { at }),
    advice: 'This stroke alone is longer than one feed can serve: feed it at both ends, or cut it in two.',
  }, 'caution');
}

/** The longest stretch without light: at an end of a tube, or where strokes meet. */
function darkCheck(lighting: Lighting, limit: number): Check {
  const ends = piecesOf(lighting).flatMap(({ path, unlitStart, unlitEnd }) => [{ at: path.start, length: unlitStart }, { at: pathEnd(path), length: unlitEnd }]);
  const all = [...ends, ...lighting.dark.filter(({ why }) => why !== 'too short')];
  const longest = all.reduce<(typeof all)[number] | undefined>((most, one) => (one.length > (most?.length ?? 0) ? one : most), undefined);
  return atMost({
    check: 'dark-stretch', subject: 'Longest stretch without light', value: longest?.length ?? 0, limit, unit: 'mm', ...(longest && { at: longest.at }),
    advice: 'Take a strip of shorter modules, or change the length of this stroke.',
  }, 'caution');
}

function shortCheck({ dark }: Lighting): Check {
  const short = dark.filter(({ why }) => why === 'too short');
  const names = short.map(({ stroke, length }) => `stroke ${stroke + 1} (${amount(Math.round(length * 10) / 10, 'mm')})`).join(', ');
  return atMost({
    check: 'strokes-too-short', subject: 'Parts of strokes too short for one module', value: short.length, limit: 0, unit: 'count', ...(short[0] && { at: short[0].at }),
    advice: `They stay dark: ${names}. Lengthen them, join them to others, or take a strip of shorter modules.`,
  }, 'caution');
}

/** What is bought and what it comes to. */
export function layoutQuantities(lighting: Lighting, channel: Channel): Quantities {
  const pieces = piecesOf(lighting);
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const strip = stripLength(pieces);
  const groove = sum(channel.centreLines.map(pathLength));
  return {
    lightRuns: { value: lighting.runs.length, unit: 'count' },
    stripPieces: { value: pieces.length, unit: 'count' },
    stripModules: { value: sum(pieces.map(({ modules }) => modules)), unit: 'count' },
    stripLength: { value: strip, unit: 'mm' },
    tubeLength: { value: sum(pieces.map(({ path }) => pathLength(path))), unit: 'mm' },
    litShare: { value: groove > 0 ? strip / groove : 0, unit: 'ratio' },
    jumperWire: { value: sum(lighting.runs.flatMap(({ jumpers }) => jumpers.map(({ length }) => length))), unit: 'mm' },
    lightPower: { value: sum(lighting.runs.map(({ watts }) => watts)), unit: 'W' },
    lightCurrent: { value: sum(lighting.runs.map(({ amps }) => amps)), unit: 'A' },
    lightOutput: { value: (strip / 1000) * lighting.strip.lumensPerMetre, unit: 'lm' },
  };
}
