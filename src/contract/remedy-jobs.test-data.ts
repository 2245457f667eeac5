import { applyEdits, type JobEdit } from './job-edits.ts'

/** Jobs of the workshop with one thing wrong in each, for trying out what is offered against it. */

type Group = Readonly<Record<string, unknown>>

const FIRES = [
  { name: 'coal fire', kind: 'coal' },
  { name: 'gas forge', kind: 'gas' },
]
const OIL = { name: 'oil drum', kind: 'medium oil', volume: '20 L', depth: '300 mm', temperature: '50 °C' }
const TUB = { name: 'slack tub', kind: 'water', volume: '60 L', depth: '400 mm', temperature: '20 °C' }
const FAST = { name: 'quench tank', kind: 'fast oil', volume: '60 L', depth: '450 mm', temperature: '45 °C' }
const OVEN = { name: 'small oven', max: '230 °C', reads: '8 °C low', swing: '15 °C' }
const KILN = { name: 'kiln', max: '1100 °C', reads: 'true', swing: '5 °C' }
const shop = { fires: FIRES, baths: [OIL, TUB], ovens: [OVEN] }
export const WELL_FURNISHED = {
  fires: [...FIRES, { name: 'torch', kind: 'torch' }],
  baths: [OIL, TUB, FAST],
  ovens: [OVEN, KILN],
}

/** An oil-hardening point on a thicker body. */
export const punch: Group = {
  piece: 'centre punch',
  steel: { grade: 'O1' },
  profile: [
    { shape: 'round', from: '2 mm', to: '10 mm', length: '25 mm', tip: { radius: '0.8 mm' } },
    { shape: 'round', across: '12 mm', length: '85 mm', fillet: '4 mm' },
  ],
  struck: true,
  zones: [
    { name: 'point', from: '1 mm', to: '20 mm', aim: '57..61 HRC' },
    { name: 'struck end', from: '95 mm', to: '110 mm', aim: 'at most 45 HRC' },
  ],
  shop,
  process: [
    { do: 'heat', in: 'gas forge', to: '805 °C', hold: '25 min', part: { from: '0 mm', to: '70 mm' } },
    { do: 'carry', for: '2 s' },
    { do: 'quench', in: 'oil drum', depth: 'whole', for: '2 min', agitation: 'moderate' },
    { do: 'temper', in: 'small oven', at: '205 °C', hold: '2 h', times: 1 },
  ],
}

/** A plain pin that is hard all through, and nobody strikes it. */
export const pin: Group = {
  piece: 'locating pin',
  steel: { grade: '4140' },
  profile: [{ shape: 'round', across: '16 mm', length: '90 mm' }],
  struck: false,
  zones: [{ name: 'pin', from: '0 mm', to: '90 mm', aim: '48..54 HRC' }],
  shop,
  process: [
    { do: 'normalise', in: 'gas forge', to: '870 °C', hold: '6 min', times: 2 },
    { do: 'heat', in: 'gas forge', to: '855 °C', hold: '12 min' },
    { do: 'carry', for: '3 s' },
    { do: 'quench', in: 'oil drum', depth: 'whole', for: '4 min', agitation: 'moderate' },
    { do: 'temper', in: 'small oven', at: '215 °C', hold: '2 h', times: 1 },
  ],
}

/** A stepped tool: a hard head on a thinner shank. */
export const stepped: Group = {
  ...pin,
  piece: 'bottom tool',
  profile: [
    { shape: 'round', across: '30 mm', length: '50 mm' },
    { shape: 'round', across: '20 mm', length: '60 mm', fillet: '6 mm' },
  ],
  zones: [{ name: 'head', from: '0 mm', to: '20 mm', aim: '48..54 HRC' }],
  process: [
    { do: 'heat', in: 'gas forge', to: '855 °C', hold: '20 min' },
    { do: 'carry', for: '3 s' },
    { do: 'quench', in: 'oil drum', depth: 'whole', for: '6 min', agitation: 'moderate' },
    { do: 'temper', in: 'small oven', at: '215 °C', hold: '2 h', times: 1 },
  ],
}

/** A water-hardening chisel that is hardened at its end. */
export const chisel: Group = {
  piece: 'cold chisel',
  steel: { grade: 'W1' },
  profile: [
    { shape: 'flat', from: '6 x 22 mm', to: '16 x 20 mm', length: '45 mm' },
    { shape: 'octagon', across: '19 mm', length: '125 mm', fillet: '8 mm' },
  ],
  struck: true,
  zones: [{ name: 'edge', from: '0 mm', to: '20 mm', aim: '54..60 HRC' }],
  shop,
  process: [
    { do: 'normalise', in: 'coal fire', to: '830 °C', hold: '3 min', times: 2 },
    { do: 'heat', in: 'coal fire', to: '790 °C', hold: '10 min' },
    { do: 'carry', for: '3 s' },
    { do: 'quench', in: 'slack tub', depth: '40 mm', for: '1 min', agitation: 'moderate' },
    { do: 'temper', in: 'small oven', at: '225 °C', hold: '1 h', times: 1 },
  ],
}

/** A long air-hardening punch. */
export const slotPunch: Group = {
  piece: 'slot punch',
  steel: { grade: 'S7' },
  profile: [
    { shape: 'flat', from: '5 x 16 mm', to: '19 x 22 mm', length: '60 mm' },
    { shape: 'round', across: '22 mm', length: '120 mm', fillet: '3 mm' },
  ],
  struck: true,
  zones: [
    { name: 'working end', from: '0 mm', to: '40 mm', aim: '54..58 HRC' },
    { name: 'struck end', from: '160 mm', to: '180 mm', aim: 'at most 40 HRC' },
  ],
  shop,
  process: [
    { do: 'heat', in: 'gas forge', to: '945 °C', hold: '40 min', part: { from: '0 mm', to: '100 mm' } },
    { do: 'quench', in: 'still air', for: '40 min' },
    { do: 'temper', in: 'small oven', at: '215 °C', hold: '2 h', times: 2 },
  ],
}

export interface FaultyJob {
  readonly id: string
  readonly says: string
  readonly job: unknown
}

const at = (path: string, value: unknown): JobEdit => ({
  path: path.split('.').map((key) => (/^\d+$/u.test(key) ? Number(key) : key)),
  value,
})
const put = (path: string, insert: unknown): JobEdit => ({ path: at(path, 0).path, insert })
const faulty = (id: string, says: string, base: Group, ...edits: readonly JobEdit[]): FaultyJob => ({
  id,
  says,
  job: applyEdits(base, edits),
})
const furnished = at('shop', WELL_FURNISHED)

export const FAULTY_JOBS: readonly FaultyJob[] = [
  faulty('underheated', 'too cool', punch, at('process.0.to', '745 °C')),
  faulty('underheated', 'too cool, in degF', pin, at('process.1.to', '1400 °F')),
  faulty('underheated', 'a long walk', punch, at('process.1.for', '9 s')),
  faulty('underheated', 'a long walk of a flat edge', chisel, at('process.2.for', '25 s')),
  faulty('underheated', 'part heat too short', punch, at('process.0.part.to', '18 mm')),
  faulty('underheated', 'part heat too short, pin', pin, at('process.1.part', { from: '0 mm', to: '50 mm' })),
  faulty('overheated', 'too hot', punch, at('process.0.to', '880 °C')),
  faulty('overheated', 'far too hot', chisel, at('process.1.to', '950 °C')),
  faulty('overheated', 'too hot, 4140', pin, at('process.1.to', '960 °C')),
  faulty('soak-too-short', 'O1 for a minute', punch, at('process.0.hold', '3 min')),
  faulty('soak-too-short', 'thick, pulled early', stepped, at('process.0.hold', '1 min')),
  faulty('soak-too-short', 'S7 for ten minutes', slotPunch, at('process.0.hold', '8 min')),
  faulty('uneven-heat', 'one side', pin, at('process.1.even', false)),
  faulty('uneven-heat', 'one side of a chisel', chisel, at('process.1.even', 'no')),
  faulty('steel-will-not-harden', 'mild', pin, at('steel', { grade: 'A36' }), at('process.3.in', 'slack tub')),
  faulty(
    'steel-will-not-harden',
    'mild, well furnished',
    pin,
    at('steel', { grade: '1018' }),
    at('process.3.in', 'slack tub'),
    furnished,
  ),
  faulty('steel-will-not-harden', 'not so hard', pin, at('zones.0.aim', '58..62 HRC')),
  faulty(
    'steel-will-not-harden',
    'shallow in brine',
    stepped,
    at('steel', { grade: '1045' }),
    at('process.0.to', '845 °C'),
    at('process.2.in', 'slack tub'),
    at('shop.baths.1.kind', 'brine'),
    at('profile.0.across', '45 mm'),
    at('zones.0.aim', '54..58 HRC'),
    at('process.0.hold', '40 min'),
  ),
  faulty('bath-too-slow', '1045 in oil', stepped, at('steel', { grade: '1045' }), at('process.0.to', '845 °C')),
  faulty(
    'bath-too-slow',
    '1045 in oil, well furnished',
    stepped,
    at('steel', { grade: '1045' }),
    at('process.0.to', '845 °C'),
    furnished,
  ),
  faulty('bath-too-slow', '4140 in air', pin, at('process.3', { do: 'quench', in: 'still air', for: '30 min' })),
  faulty(
    'bath-too-slow',
    '1084 in oil',
    pin,
    at('steel', { grade: '1084' }),
    at('process.1.to', '815 °C'),
    at('zones.0.aim', '58..62 HRC'),
    furnished,
  ),
  faulty('bath-too-fast', 'O1 in water', punch, at('process.2.in', 'slack tub')),
  faulty('bath-too-fast', 'S7 in water', slotPunch, at('process.1', { do: 'quench', in: 'slack tub', for: '4 min' })),
  faulty('bath-too-fast', 'thin edge in water', chisel, at('profile.0.from', '2.5 x 22 mm')),
  faulty(
    'bath-too-fast',
    'A2 in fast oil',
    slotPunch,
    furnished,
    at('steel', { grade: 'A2' }),
    at('process.0.to', '970 °C'),
    at('process.1', { do: 'quench', in: 'quench tank', for: '4 min' }),
  ),
  faulty('bath-too-hot', 'hot oil', pin, at('shop.baths.0.temperature', '98 °C')),
  faulty('bath-too-hot', 'hot water', chisel, at('shop.baths.1.temperature', '60 °C')),
  faulty('bath-too-hot', 'hot oil, another at hand', pin, furnished, at('shop.baths.0.temperature', '98 °C')),
  faulty('bath-too-cold', 'cold oil', pin, at('shop.baths.0.temperature', '6 °C')),
  faulty('bath-too-cold', 'ice-cold water', chisel, at('shop.baths.1.temperature', '2 °C')),
  faulty('bath-too-small', 'a jar', pin, at('shop.baths.0.volume', '0.8 L')),
  faulty('bath-too-small', 'a small bucket for a big head', stepped, at('shop.baths.0.volume', '3 L')),
  faulty('bath-too-small', 'a jar, a tank at hand', pin, furnished, at('shop.baths.0.volume', '0.8 L')),
  faulty('bath-too-shallow', 'long pin', pin, at('shop.baths.0.depth', '100 mm')),
  faulty('bath-too-shallow', 'long punch in a small tin', punch, at('shop.baths.0.depth', '90 mm')),
  faulty('bath-too-shallow', 'a tank at hand', pin, furnished, at('shop.baths.0.depth', '80 mm')),
  faulty('bath-too-shallow', 'not dipped deep enough', chisel, at('process.3.depth', '12 mm')),
  faulty(
    'quench-line-at-shoulder',
    'thin end, thick body',
    stepped,
    at('profile', [
      { shape: 'round', across: '14 mm', length: '40 mm' },
      { shape: 'round', across: '22 mm', length: '80 mm', fillet: '4 mm' },
    ]),
    at('process.2.depth', '44 mm'),
  ),
  faulty('quench-line-at-shoulder', 'at the step', stepped, at('process.2.depth', '52 mm')),
  faulty('quench-line-at-shoulder', 'in inches', stepped, at('process.2.depth', '1-7/8 in')),
  faulty('sharp-inner-corner', 'no radius', stepped, { path: ['profile', 1, 'fillet'] }),
  faulty('sharp-inner-corner', 'hardly any', stepped, at('profile.1.fillet', '0.3 mm')),
  faulty('sharp-inner-corner', 'punch without', slotPunch, { path: ['profile', 1, 'fillet'] }, at('profile.0.to', '12 x 18 mm')),
  faulty('section-jump', 'head on a thin shank', stepped, at('profile.1.across', '12 mm')),
  faulty(
    'section-jump',
    'thin point on a thick body',
    stepped,
    at('profile', [
      { shape: 'round', across: '10 mm', length: '40 mm' },
      { shape: 'round', across: '24 mm', length: '80 mm', fillet: '4 mm' },
    ]),
  ),
  faulty(
    'thin-beside-thick',
    'thin end',
    stepped,
    at('profile', [
      { shape: 'flat', across: '7 x 30 mm', length: '25 mm' },
      { shape: 'round', across: '36 mm', length: '70 mm', fillet: '4 mm' },
    ]),
  ),
  faulty('thin-beside-thick', 'thin wall', stepped, at('profile.0.bore', { across: '24 mm', depth: '20 mm' })),
  faulty('temper-soon', 'none', pin, { path: ['process', 4] }),
  faulty('temper-soon', 'none, S7', slotPunch, { path: ['process', 2] }),
  faulty('temper-soon', 'late', pin, put('process.4', { do: 'carry', for: '5 h' })),
  faulty(
    'temper-soon',
    'only an end',
    pin,
    at('process.4', { do: 'temper', in: 'coal fire', at: '600 °C', hold: '2 min', part: { from: '60 mm', to: '90 mm' } }),
  ),
  faulty('temper-too-cool-for-aim', 'too cool', pin, at('process.4.at', '160 °C'), at('zones.0.aim', '48..52 HRC'), furnished),
  faulty('temper-too-cool-for-aim', 'too cool, S7', slotPunch, at('zones.0.aim', '50..53 HRC'), furnished),
  faulty(
    'temper-too-cool-for-aim',
    'one end softer',
    pin,
    at('zones', [
      { name: 'nose', from: '0 mm', to: '40 mm', aim: '50..56 HRC' },
      { name: 'tail', from: '75 mm', to: '90 mm', aim: '32..40 HRC' },
    ]),
  ),
  faulty(
    'temper-too-cool-for-aim',
    'spring steel',
    pin,
    at('steel', { grade: '5160' }),
    at('process.1.to', '840 °C'),
    at('zones.0.aim', '44..48 HRC'),
    furnished,
  ),
  faulty('temper-too-hot-for-aim', 'too hot', pin, furnished, at('process.4.in', 'kiln'), at('process.4.at', '420 °C')),
  faulty('temper-too-hot-for-aim', 'too hot, O1', punch, furnished, at('process.3.in', 'kiln'), at('process.3.at', '320 °C')),
  faulty('oven-cannot-reach', 'set too hot', pin, at('process.4.at', '430 °C'), at('zones.0.aim', '40..46 HRC')),
  faulty(
    'oven-cannot-reach',
    'set too hot, a kiln at hand',
    pin,
    furnished,
    at('process.4.at', '430 °C'),
    at('zones.0.aim', '40..46 HRC'),
  ),
  faulty('oven-cannot-reach', 'wants hotter', pin, at('zones.0.aim', '38..44 HRC')),
  faulty('oven-error-matters', 'reads 40 low', pin, at('shop.ovens.0.reads', '40 °C low')),
  faulty('oven-error-matters', 'swings far', punch, at('shop.ovens.0.swing', '60 °C'), at('process.3.at', '220 °C')),
  faulty(
    'colours-unreliable',
    'races',
    chisel,
    at('process.3.for', '2 s'),
    at('process.4', { do: 'run-colours', stop: '240 °C' }),
  ),
  faulty(
    'colours-unreliable',
    'never comes',
    chisel,
    at('process.3.for', '3 min'),
    at('process.4', { do: 'run-colours', stop: '260 °C' }),
  ),
  faulty(
    'colours-unreliable',
    'rich steel',
    chisel,
    at('steel', { grade: '5160' }),
    at('process.3.in', 'oil drum'),
    at('process.3.for', '10 s'),
    at('process.1.to', '840 °C'),
    at('process.4', { do: 'run-colours', stop: '240 °C' }),
  ),
  faulty(
    'embrittling-range',
    '4140 at a blue',
    pin,
    furnished,
    at('process.4.in', 'kiln'),
    at('process.4.at', '300 °C'),
    at('zones.0.aim', '46..54 HRC'),
  ),
  faulty(
    'embrittling-range',
    '5160',
    pin,
    furnished,
    at('steel', { grade: '5160' }),
    at('process.1.to', '840 °C'),
    at('process.4.in', 'kiln'),
    at('process.4.at', '310 °C'),
    at('zones.0.aim', '48..56 HRC'),
  ),
  faulty('retained-austenite', 'O1 hot', punch, at('process.0.to', '860 °C'), at('process.0.hold', '40 min')),
  faulty(
    'retained-austenite',
    'D2 hot',
    pin,
    furnished,
    at('steel', { grade: 'D2' }),
    at('process', [
      { do: 'heat', in: 'gas forge', to: '1090 °C', hold: '40 min' },
      { do: 'quench', in: 'still air', for: '40 min' },
      { do: 'temper', in: 'small oven', at: '205 °C', hold: '2 h', times: 2 },
    ]),
    at('zones.0.aim', '56..62 HRC'),
  ),
  faulty('more-than-one-temper', 'S7 once', slotPunch, at('process.2.times', 1)),
  faulty('more-than-one-temper', 'S7, times left out', slotPunch, { path: ['process', 2, 'times'] }),
  faulty('struck-end-hard', 'hardened whole', punch, { path: ['process', 0, 'part'] }),
  faulty('struck-end-hard', 'S7 whole', slotPunch, { path: ['process', 0, 'part'] }),
  faulty('struck-end-hard', 'chisel quenched whole', chisel, at('process.3.depth', 'whole')),
  faulty('struck-end-hard', 'nobody asked', punch, { path: ['process', 0, 'part'] }, { path: ['zones', 1] }),
  faulty(
    'hollow-edge-chips',
    'rivet set',
    stepped,
    at('profile.0.dish', { across: '26 mm', depth: '8 mm' }),
    at('process.3.at', '180 °C'),
    at('zones.0.aim', '48..57 HRC'),
  ),
  faulty(
    'hollow-edge-chips',
    'rivet set with a wide hollow',
    stepped,
    at('profile.0.dish', { across: '28 mm', depth: '8 mm' }),
    at('process.3.at', '170 °C'),
    at('zones.0.aim', '54..58 HRC'),
  ),
  faulty('decarburised-skin', 'hours in the fire', pin, at('process.1.hold', '2 h'), at('process.0.hold', '40 min')),
  faulty(
    'decarburised-skin',
    'hours in the fire, kiln at hand',
    pin,
    furnished,
    at('process.1.hold', '2 h'),
    at('process.0.hold', '40 min'),
  ),
  faulty('coarse-grain', 'far too hot', pin, at('process.1.to', '1050 °C'), at('process.1.hold', '30 min')),
  faulty('coarse-grain', 'coarse bar', { ...stepped, grainSize: 3 }),
  faulty('red-short', 'leaded', pin, at('steel', { grade: '1144' })),
  faulty(
    'red-short',
    'a struck one',
    punch,
    at('steel', { grade: '1144' }),
    at('process.0.to', '830 °C'),
    at('zones.0.aim', '52..56 HRC'),
  ),
  faulty('aim-out-of-reach', 'too hard a wish', pin, at('zones.0.aim', '57..60 HRC')),
  faulty(
    'aim-out-of-reach',
    'no quench',
    pin,
    at('process', [{ do: 'normalise', in: 'gas forge', to: '870 °C', hold: '6 min', times: 2 }]),
  ),
  faulty(
    'aim-out-of-reach',
    'no quench, tempered',
    pin,
    at('process', [
      { do: 'normalise', in: 'gas forge', to: '870 °C', hold: '6 min', times: 2 },
      { do: 'temper', in: 'small oven', at: '210 °C', hold: '2 h' },
    ]),
  ),
  faulty('aim-out-of-reach', 'hard up to the struck end', chisel, at('zones.0.to', '155 mm')),
]
