import type {} from '../types.ts';
import type { PortType, PortTypes } from '../../runtime/node.ts';
import { money } from '../../costing/money.ts';
import type { SetUp } from '../../machining/index.ts';
import { type Check, amount, fileLength } from '../check.ts';
import type { Carried } from '../picture.ts';

type Write<T extends PortType> = (value: PortTypes[T]) => readonly string[];

/** Lines of a program that show what it is. */
const PROGRAM_HEAD = 12;

const NONE = () => [];

const LINES: { readonly [T in PortType]: Write<T> } = {
  strokes: NONE, outlines: NONE, junctions: NONE, region: NONE, channel: NONE, holes: NONE, stock: NONE, machine: NONE, tabs: NONE, passes: NONE, tiling: NONE, registration: NONE, holding: NONE, lighting: NONE, image: NONE,
  number: (value) => [amount(value, '')],
  text: (text) => text.split(/\r?\n/),
  cutter: ({ name, diameter, flutes, chipLoad, spindleSpeed, feedRate, plungeFeed, depthOfCut, cuttingLength, rampAngle }) => [
    name,
    `diameter ${amount(diameter, 'mm')}, ${flutes} ${flutes === 1 ? 'flute' : 'flutes'}, cutting length ${amount(cuttingLength, 'mm')}`,
    `spindle ${amount(spindleSpeed, '1/min')}, chip load ${amount(chipLoad, 'mm')}`,
    `feed ${amount(feedRate, 'mm/min')}, plunge ${amount(plungeFeed, 'mm/min')}, ramp ${amount(rampAngle, 'deg')}`,
    `depth of cut ${amount(depthOfCut, 'mm')}`,
  ],
  strip: ({ wattsPerMetre, volts, moduleLength, leastBend, lies, width, colourTemperature, lumensPerMetre, railResistance, greatestCurrent }) => [
    `${amount(wattsPerMetre, 'W/m')} at ${amount(volts, 'V')}, at most ${amount(greatestCurrent, 'A')} from one feed`,
    `${amount(width, 'mm')} wide, lies ${lies}, bends to ${amount(leastBend, 'mm')}`,
    `cut every ${amount(moduleLength, 'mm')}`,
    `${amount(colourTemperature, 'K')}, ${amount(lumensPerMetre, 'lm/m')}`,
    `rails ${amount(railResistance, 'ohm/m')} there and back`,
  ],
  tube: ({ width, height, leastBend, wall }) => [`${width} x ${amount(height, 'mm')}, wall ${amount(wall, 'mm')}`, `bends to ${amount(leastBend, 'mm')}`],
  materials: ({ rows }) => rows.map(({ item, quantity, unit }) => `${item}: ${amount(quantity, unit)}`),
  rates: ({ of, own, margin, tax, taxName, currency }) => [
    own ? 'the shop\'s own' : 'placeholders, no prices', ...Object.entries(of).map(([part, rate]) => `${part}: ${money(Math.round(rate * 100), currency)}`),
    `margin ${amount(margin * 100, '%')}, ${taxName} ${amount(tax * 100, '%')}`,
  ],
  price: ({ lines, cost, margin, net, tax, total, rates: { currency, taxName } }) => [
    ...lines.map(({ item, quantity, unit, rate, hundredths }) => `${item}: ${amount(quantity, unit)} at ${rate}, ${money(hundredths, currency)}`),
    `sum ${money(cost, currency)}, margin ${money(margin, currency)}, net ${money(net, currency)}`, `${taxName} ${money(tax, currency)}, total ${money(total, currency)}`,
  ],
  checks: (checks) => worstFirst(checks).map(({ status, says }) => `${status}: ${says}`),
  quantities: (quantities) => Object.entries(quantities).map(([name, { value, unit }]) => `${name}: ${amount(value, unit)}`),
  files: (files) => files.map((file) => `${file.path}, ${fileLength(file)} ${'text' in file ? 'characters' : 'bytes'}`),
  'set-ups': (setups) => [...setups.map((setup) => describeSetUp(setup)), ...programHead(setups)],
};

/** A value in lines of text; a value that has no shape has at least one. */
export function writeLines({ type, value }: Carried): readonly string[] {
  return (LINES[type] as Write<PortType>)(value as never);
}

function worstFirst(checks: readonly Check[]): Check[] {
  return (['fail', 'caution', 'pass'] as const).flatMap((wanted) => checks.filter(({ status }) => status === wanted));
}

function describeSetUp(setup: SetUp): string {
  const minutes = setup.programs.reduce((sum, program) => sum + program.minutes, 0);
  return `${setup.name}: ${setup.programs.map(({ file }) => file).join(', ') || 'no program'}, ${amount(Math.round(minutes * 10) / 10, 'min')}`;
}

function programHead(setups: readonly SetUp[]): string[] {
  return setups[0]?.programs[0]?.text.split('\n', PROGRAM_HEAD) ?? [];
}
