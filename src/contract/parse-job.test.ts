import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type ParseOptions, parseJob } from './parse-job.ts'
import { InputProblems, type Problem } from './problems.ts'
import { readJobText } from './read-job.ts'

/** A file of this text. */
const held =
  (text: string) =>
  (name: string): unknown =>
    readJobText(text, name)

const punch = {
  piece: 'slot punch',
  steel: { grade: 'S7' },
  profile: [
    { shape: 'flat', from: '5 x 12 mm', to: '19 x 25 mm', length: '60 mm' },
    { shape: 'round', across: '22 mm', length: '110 mm', fillet: '3 mm' },
    { shape: 'round', from: '22 mm', to: '16 mm', length: '12 mm' },
  ],
  zones: [
    { name: 'working end', from: '0 mm', to: '40 mm', aim: '54..57 HRC' },
    { name: 'struck end', from: '165 mm', to: '182 mm', aim: 'at most 40 HRC' },
  ],
  probes: [{ name: 'core at 90', x: '90 mm', r: '0 mm' }],
  shop: {
    fires: [{ name: 'coal fire', kind: 'coal' }],
    baths: [{ name: 'oil bucket', kind: 'medium oil', volume: '12 L', depth: '250 mm', temperature: '50 °C' }],
    ovens: [{ name: 'small oven', max: '230 °C', reads: '8 °C low', swing: '15 °C' }],
  },
  process: [
    { do: 'normalise', in: 'coal fire', to: '870 °C', hold: '10 min', times: 2 },
    { do: 'heat', in: 'coal fire', to: '940 °C', hold: '15 min' },
    { do: 'carry', for: '3 s' },
    { do: 'quench', in: 'oil bucket', depth: 'whole', for: '3 min', agitation: 'moderate' },
    { do: 'temper', in: 'small oven', at: '205 °C', hold: '2 h', times: 2 },
  ],
}

function problemsOf(input: unknown, options: ParseOptions = {}): readonly Problem[] {
  try {
    parseJob(input, options)
  } catch (error) {
    if (error instanceof InputProblems) return error.problems
    throw error
  }
  return []
}

function fieldsOf(input: unknown): string[] {
  return problemsOf(input).map(({ field }) => field)
}

test('a field under a wrong name is one fault', () => {
  const [first, second] = punch.zones
  const { aim, ...rest } = first!
  expect(problemsOf({ ...punch, zones: [{ ...rest, aims: aim }, second] })).toEqual([
    { field: 'zones[0].aims', says: expect.stringContaining('did you mean "aim"') },
  ])
})

test('a hot piece is not carried for hours; a quenched one may lie as long as it is left', () => {
  const [normalise, heat, carry, quench, temper] = punch.process
  const long = { do: 'carry', for: '6 h' }
  expect(problemsOf({ ...punch, process: [normalise, heat, long, quench, temper] })).toEqual([
    { field: 'process[2].for', says: expect.stringContaining('10 min') },
  ])
  expect(problemsOf({ ...punch, process: [normalise, heat, carry, quench, long, temper] })).toEqual([])
  expect(fieldsOf({ ...punch, process: [normalise, heat, carry, quench, { ...long, for: '200 h' }, temper] })).toEqual([
    'process[4].for',
  ])
})

describe('a whole job', () => {
  const { job, typed, assumptions } = parseJob(punch)

  test('is read into SI', () => {
    expect(job.profile.sections[0]).toEqual({
      shape: 'flat',
      from: { acrossM: 0.005, widthM: 0.012 },
      to: { acrossM: 0.019, widthM: 0.025 },
      lengthM: 0.06,
    })
    expect(job.profile.sections[1]).toMatchObject({ from: { acrossM: 0.022 }, to: { acrossM: 0.022 }, filletM: 0.003 })
    expect(job.zones).toEqual([
      { name: 'working end', fromM: 0, toM: 0.04, aim: { lowHrc: 54, highHrc: 57 }, assumed: false },
      { name: 'struck end', fromM: 0.165, toM: 0.182, aim: { highHrc: 40 }, assumed: false },
    ])
    expect(job.shop.ovens).toEqual([{ name: 'small oven', maxK: 503.15, readsLowK: 8, swingK: 15 }])
    expect(job.shop.baths[0]).toEqual({
      name: 'oil bucket',
      kind: 'medium oil',
      temperatureK: 323.15,
      volumeM3: 0.012,
      depthM: 0.25,
    })
    expect(job.process).toEqual([
      { do: 'normalise', in: 'coal fire', toK: 1143.15, holdS: 600, times: 2 },
      { do: 'heat', in: 'coal fire', toK: 1213.15, holdS: 900, even: true },
      { do: 'carry', forS: 3 },
      { do: 'quench', in: 'oil bucket', forS: 180, agitation: 'moderate' },
      { do: 'temper', in: 'small oven', atK: 478.15, holdS: 7200, times: 2 },
    ])
    expect(job.steel).toMatchObject({ name: 'S7', gradeId: 'S7', grainSize: 7 })
    expect(job.probes).toEqual([{ name: 'core at 90', xM: 0.09, rM: 0 }])
  })

  test('keeps what was typed, step for step', () => {
    expect(typed.profile[0]?.from?.typed).toBe('5 x 12 mm')
    expect(typed.process.map((step) => step.do)).toEqual(job.process.map((step) => step.do))
    expect(typed.zones[0]?.aim.typed).toBe('54..57 HRC')
  })

  test('says what nobody wrote, and no more', () => {
    expect(assumptions.map(({ says }) => says)).toEqual([
      'Grain size 7 (ASTM E112).',
      'Struck with a hammer at its other end.',
      '"coal fire" burns neutral.',
    ])
  })

  test('a bar that nothing prepares comes as such steel is sold', () => {
    const process = punch.process.filter((step) => step.do !== 'normalise' && step.do !== 'anneal')
    const says = (steel: unknown) => parseJob({ ...punch, steel, process }).assumptions.map((each) => each.says)
    expect(says({ grade: 'O1' })).toContain('The bar comes annealed, its carbide in coarse globules.')
    expect(says({ grade: '4140' })).toContain('The bar comes as rolled, its carbide in pearlite.')
  })

  test('reads the same from JSON text and whatever the case of a name', () => {
    const shouting = {
      ...punch,
      process: punch.process.map((step) => ('in' in step ? { ...step, in: step.in?.toUpperCase() } : step)),
    }
    expect(parseJob(JSON.parse(JSON.stringify(shouting))).job).toEqual(job)
  })
})

describe('what is left out is assumed and said', () => {
  const bare = {
    piece: 'bick',
    steel: { grade: 'O1', grainSize: 8 },
    profile: [{ shape: 'square', across: '3/4 in', length: '4 in' }],
    process: [
      { do: 'heat', to: '1475 °F' },
      { do: 'quench' },
      { do: 'run-colours', stop: 'dark straw' },
      { do: 'temper', at: '400 °F' },
    ],
  }
  const withOil = { ...bare, process: bare.process.map((step) => (step.do === 'quench' ? { ...step, in: 'oil bucket' } : step)) }

  test('fire, walk, hold, stay, agitation, oven, times', () => {
    const { job, assumptions } = parseJob(withOil)
    expect(job.process).toEqual([
      { do: 'heat', in: 'coal fire', toK: expect.closeTo(1074.82, 2), holdS: 300, even: true },
      { do: 'carry', forS: 3 },
      { do: 'quench', in: 'oil bucket', forS: 300, agitation: 'moderate' },
      { do: 'run-colours', in: 'oil bucket', stopAtK: expect.closeTo(522.15, 9), byColour: true },
      { do: 'temper', in: 'small oven', atK: expect.closeTo(477.594, 2), holdS: 3600, times: 1 },
    ])
    expect(job.struck).toBe(false)
    const said = assumptions.map(({ says }) => says).join(' ')
    for (const each of [
      'coal fire',
      '3 s from the fire',
      'held 5 min',
      '5 min in the bath',
      'moderate',
      '249 °C',
      '12 L',
      'reads true',
    ])
      expect(said).toContain(each)
    expect(assumptions.every(({ because }) => because.length > 5)).toBe(true)
  })

  test('two baths and no word which: a problem, not a guess', () => {
    expect(problemsOf(bare)).toEqual([{ field: 'process[1].in', says: expect.stringContaining('oil bucket, water bucket') }])
  })

  test('a bath without temperature is at 20 °C, said only when it is used', () => {
    const baths = [
      { name: 'oil bucket', kind: 'fast oil', volume: '5 gal' },
      { name: 'slack tub', kind: 'water' },
    ]
    const { job, assumptions } = parseJob({ ...withOil, shop: { baths } })
    expect(job.shop.baths[0]?.temperatureK).toBe(293.15)
    const said = assumptions.map(({ says }) => says)
    expect(said).toContain('"oil bucket" is at 20 °C.')
    expect(said.some((each) => each.includes('slack tub'))).toBe(false)
  })

  test('a plan may stand without a process', () => {
    const { job } = parseJob({ ...punch, process: undefined }, { process: 'absent-ok' })
    expect(job.process).toEqual([])
    expect(fieldsOf({ ...punch, process: undefined })).toEqual(['process'])
    expect(fieldsOf({ ...punch, process: [] })).toEqual(['process'])
  })

  test('a plan may choose from the usual shop, whatever its process names', () => {
    const { job } = parseJob({ ...withOil, zones: [] }, { process: 'absent-ok' })
    expect(job.shop.baths.map(({ name }) => name)).toEqual(['oil bucket', 'water bucket'])
    expect(parseJob({ ...withOil, process: undefined, shop: { baths: [] } }, { process: 'absent-ok' }).job.shop).toMatchObject({
      fires: [{ name: 'coal fire' }],
      baths: [],
      ovens: [{ name: 'small oven' }],
    })
  })

  test('air under a name of the shop is no bath: nobody walks to it', () => {
    const baths = [{ name: 'yard', kind: 'moving air' }]
    const process = [
      { do: 'heat', in: 'gas forge', to: '1800 °F', hold: '20 min' },
      { do: 'quench', in: 'Yard' },
    ]
    const { job, assumptions } = parseJob({ ...bare, steel: { grade: 'S7' }, shop: { baths }, process })
    expect(job.process[1]).toEqual({ do: 'quench', in: 'yard', forS: 300, agitation: 'still' })
    expect(job.shop.fires).toEqual([{ name: 'gas forge', kind: 'gas' }])
    expect(assumptions.some(({ says }) => says.includes('agitation') || says.includes('3 s'))).toBe(false)
  })

  test('a word of the trade stands for a steel with its warning', () => {
    const { assumptions } = parseJob({ ...punch, steel: { grade: 'silver steel' } })
    expect(assumptions[1]).toEqual({
      says: expect.stringContaining('silver steel is taken as'),
      because: expect.stringMatching(/\w{5}/u),
    })
  })

  test('an aim on another scale, or of one figure', () => {
    const zones = [
      { name: 'edge', from: '0 mm', to: '10 mm', aim: '560..650 HV' },
      { name: 'shank', from: '50 mm', to: '80 mm', aim: '30 HRC' },
    ]
    const { job, assumptions } = parseJob({ ...punch, zones })
    expect(job.zones[0]?.aim.lowHrc).toBeCloseTo(53, 0)
    expect(job.zones[1]?.aim).toEqual({ lowHrc: 29, highHrc: 31 })
    expect(assumptions.filter(({ says }) => says.startsWith('The aim of'))).toHaveLength(2)
  })
})

/** One fault put into the punch: what is changed, the field that is named, and words of the mend. */
const faults: readonly (readonly [string, (job: typeof punch) => unknown, string, string])[] = [
  ['unknown field', (job) => ({ ...job, stell: { grade: 'S7' } }), 'stell', 'did you mean "steel"'],
  [
    'unknown field inside',
    (job) => ({ ...job, profile: [{ ...job.profile[1], fillet: undefined, lenght: '3 mm' }] }),
    'profile[0].lenght',
    '"length"',
  ],
  [
    'unknown field in a step',
    (job) => step(job, 4, { temperature: '205 °C' }),
    'process[4].temperature',
    'known here: do, in, at',
  ],
  ['no unit', (job) => section(job, 1, { across: 22 }), 'profile[1].across', 'no unit'],
  ['no unit in words', (job) => section(job, 1, { across: '22' }), 'profile[1].across', 'as 22 mm'],
  ['negative length', (job) => section(job, 1, { length: '-110 mm' }), 'profile[1].length', 'without the minus'],
  ['NaN', (job) => section(job, 1, { length: Number.NaN }), 'profile[1].length', 'as 22 mm'],
  ['Infinity', (job) => ({ ...job, steel: { grade: 'S7', grainSize: Number.POSITIVE_INFINITY } }), 'steel.grainSize', 'number'],
  ['unknown shape', (job) => section(job, 1, { shape: 'triangle' }), 'profile[1].shape', 'round, square'],
  ['flat with one size', (job) => section(job, 0, { from: '5 mm' }), 'profile[0].from', '5 x 12 mm'],
  ['round with two sizes', (job) => section(job, 1, { across: '5 x 12 mm' }), 'profile[1].across', 'one size'],
  ['width first', (job) => section(job, 0, { from: '12 x 5 mm' }), 'profile[0].from', 'turn the two about'],
  ['across and from', (job) => section(job, 1, { from: '20 mm' }), 'profile[1].across', 'taper'],
  ['no size', (job) => section(job, 1, { across: undefined }), 'profile[1].across', 'missing'],
  ['half a taper', (job) => section(job, 2, { to: undefined }), 'profile[2].to', 'missing'],
  [
    'dish deeper than its section',
    (job) => section(job, 2, { dish: { across: '15 mm', depth: '13 mm' } }),
    'profile[2].dish.depth',
    'more than half',
  ],
  [
    'dish wider than the end',
    (job) => section(job, 2, { dish: { across: '17 mm', depth: '3 mm' } }),
    'profile[2].dish.across',
    'wider than the end',
  ],
  [
    'bore right through',
    (job) => section(job, 2, { bore: { across: '4 mm', depth: '182 mm' } }),
    'profile[2].bore.depth',
    'goes through',
  ],
  [
    'point within the piece',
    (job) => section(job, 1, { across: undefined, from: '0 mm', to: '22 mm' }),
    'profile[1].from',
    'very ends',
  ],
  ['even section of nothing', (job) => section(job, 1, { across: '0 mm' }), 'profile[1].across', 'greater than nothing'],
  [
    'dish in the middle',
    (job) => section(job, 1, { dish: { across: '9 mm', depth: '2 mm' } }),
    'profile[1].dish',
    'first or the last',
  ],
  ['fillet on the first', (job) => section(job, 0, { fillet: '2 mm' }), 'profile[0].fillet', 'next'],
  ['too long', (job) => section(job, 1, { length: '4 m' }), 'profile', 'up to 3 m'],
  ['no profile', (job) => ({ ...job, profile: null, zones: null, probes: null }), 'profile', 'missing'],
  ['zone outside the piece', (job) => zone(job, 1, { to: '190 mm' }), 'zones[1].to', '182 mm long'],
  ['zone backwards', (job) => zone(job, 0, { from: '50 mm' }), 'zones[0].to', 'not beyond'],
  ['impossible aim', (job) => zone(job, 0, { aim: 'at least 68 HRC' }), 'zones[0].aim', 'aim lower'],
  ['aim off the scale', (job) => zone(job, 0, { aim: '75 HRC' }), 'zones[0].aim', 'outside the HRC scale'],
  ['impossibly soft aim', (job) => zone(job, 1, { aim: 'at most 5 HRC' }), 'zones[1].aim', 'softer'],
  ['aim turned about', (job) => zone(job, 0, { aim: '57..54 HRC' }), 'zones[0].aim', '54..57 HRC'],
  ['aim beyond a conversion', (job) => zone(job, 1, { aim: 'at most 30 HRB' }), 'zones[1].aim', 'HRB'],
  ['zones at odds', (job) => zone(job, 1, { from: '30 mm' }), 'zones[1]', 'no hardness suits both'],
  ['zone named twice', (job) => zone(job, 1, { name: 'working end' }), 'zones[1].name', 'twice'],
  ['probe outside the skin', (job) => ({ ...job, probes: [{ x: '90 mm', r: '12 mm' }] }), 'probes[0].r', 'mm or less'],
  [
    'probe in a hollow',
    (job) => ({ ...section(job, 2, { dish: { across: '12 mm', depth: '3 mm' } }), probes: [{ x: '181 mm', r: '1 mm' }] }),
    'probes[0].r',
    '5.1 mm or more',
  ],
  ['probe beyond the end', (job) => ({ ...job, probes: [{ x: '0.5 m' }] }), 'probes[0].x', 'beyond the piece'],
  ['unknown grade', (job) => ({ ...job, steel: { grade: 'zinc 9' } }), 'steel.grade', 'no steel'],
  ['no steel', (job) => ({ ...job, steel: undefined }), 'steel', 'missing'],
  ['grade as a word', (job) => ({ ...job, steel: 'S7' }), 'steel', '{ grade: S7 }'],
  ['two steels', (job) => ({ ...job, steel: { grade: 'S7', analysis: { C: 0.5 } } }), 'steel', 'only one'],
  ['analysis without carbon', (job) => ({ ...job, steel: { analysis: { Mn: 0.5 } } }), 'steel.analysis.C', 'missing'],
  ['unknown element', (job) => ({ ...job, steel: { analysis: { C: 0.5, Xx: 1 } } }), 'steel.analysis.Xx', 'element'],
  ['unknown bar', (job) => ({ ...job, steel: { unknown: { source: 'leaf spring' } } }), 'steel.unknown', 'not built yet'],
  ['faulty evidence', (job) => ({ ...job, steel: { unknown: { sauce: 'leaf spring' } } }), 'steel.unknown.sauce', '"source"'],
  ['unknown bath', (job) => step(job, 3, { in: 'oil bukket' }), 'process[3].in', 'did you mean "oil bucket"'],
  ['unknown fire', (job) => step(job, 1, { in: 'volcano' }), 'process[1].in', 'known here: coal fire, small oven'],
  ['unknown oven', (job) => step(job, 4, { in: 'big oven' }), 'process[4].in', 'small oven'],
  ['unknown step', (job) => step(job, 1, { do: 'heet' }), 'process[1].do', 'did you mean "heat"'],
  ['no step name', (job) => step(job, 1, { do: undefined }), 'process[1].do', 'missing'],
  ['depth beyond the piece', (job) => step(job, 3, { depth: '1 m' }), 'process[3].depth', 'beyond the piece'],
  ['depth as a word', (job) => step(job, 3, { depth: 'half' }), 'process[3].depth', 'whole'],
  ['unknown agitation', (job) => step(job, 3, { agitation: 'gentle' }), 'process[3].agitation', 'still, mild, moderate, strong'],
  [
    'part beyond the piece',
    (job) => step(job, 1, { part: { from: '0 mm', to: '1 m' } }),
    'process[1].part.to',
    'beyond the piece',
  ],
  ['times as words', (job) => step(job, 4, { times: 'twice' }), 'process[4].times', 'whole number'],
  ['no times at all', (job) => step(job, 4, { times: 0 }), 'process[4].times', '1 or more'],
  ['half a time', (job) => step(job, 4, { times: 1.5 }), 'process[4].times', 'whole number'],
  ['a heat for no steel', (job) => step(job, 1, { to: '2000 °C' }), 'process[1].to', '1350'],
  ['a temper for no steel', (job) => step(job, 4, { at: '940 °C' }), 'process[4].at', '760'],
  [
    'a bath named twice',
    (job) => shop(job, { baths: [...job.shop.baths, ...job.shop.baths] }),
    'shop.baths[1].name',
    'name of shop.baths[0]',
  ],
  [
    'boiling water',
    (job) => shop(job, { baths: [...job.shop.baths, { name: 'tub', kind: 'water', temperature: '120 °C' }] }),
    'shop.baths[1].temperature',
    '100 °C',
  ],
  ['unknown kind', (job) => shop(job, { fires: [{ name: 'coal fire', kind: 'cole' }] }), 'shop.fires[0].kind', '"coal"'],
  ['unknown list', (job) => shop(job, { oven: [] }), 'shop.oven', '"ovens"'],
  [
    'oven of unknown error',
    (job) => shop(job, { ovens: [{ name: 'small oven', max: '230 °C', reads: '8 °C' }] }),
    'shop.ovens[0].reads',
    'low or high',
  ],
  ['shop in a file without a reader', (job) => ({ ...job, shop: 'shop.yaml' }), 'shop', 'write the shop into the job'],
  ['quench first', (job) => ({ ...job, process: job.process.slice(3) }), 'process[0]', 'nothing has been heated'],
  ['temper while red', (job) => ({ ...job, process: [job.process[1], job.process[4]] }), 'process[1]', 'still hot'],
  ['left in the fire', (job) => ({ ...job, process: job.process.slice(0, 2) }), 'process[1]', 'how it cools'],
  [
    'colours without a quench',
    (job) => ({ ...job, process: [{ do: 'run-colours', stop: '260 °C', in: 'oil bucket' }] }),
    'process[0]',
    'nothing has been quenched',
  ],
  [
    'unknown colour',
    (job) => ({ ...job, process: [...job.process.slice(0, 4), { do: 'run-colours', stop: 'dark straws' }] }),
    'process[4].stop',
    '"dark straw"',
  ],
  ['struck as a number', (job) => ({ ...job, struck: 3 }), 'struck', 'yes or no'],
  ['a list for a name', (job) => ({ ...job, piece: [] }), 'piece', 'name of the piece'],
]

function section(job: typeof punch, at: number, change: object): typeof punch {
  return {
    ...job,
    zones: change && 'length' in change ? [] : job.zones,
    probes: [],
    profile: job.profile.map((each, i) => (i === at ? { ...each, ...change } : each)),
  } as typeof punch
}
function zone(job: typeof punch, at: number, change: object): unknown {
  return { ...job, zones: job.zones.map((each, i) => (i === at ? { ...each, ...change } : each)) }
}
function step(job: typeof punch, at: number, change: object): unknown {
  return { ...job, process: job.process.map((each, i) => (i === at ? { ...each, ...change } : each)) }
}
function shop(job: typeof punch, change: object): unknown {
  return { ...job, shop: { ...job.shop, ...change } }
}

describe('a fault names its field and the mend', () => {
  test.each(faults)('%s', (_, spoil, field, mend) => {
    const problems = problemsOf(spoil(punch))
    expect(problems.map((problem) => problem.field)).toContain(field)
    expect(problems.find((problem) => problem.field === field)?.says).toContain(mend)
    for (const { says } of problems) expect(says.length).toBeLessThan(400)
  })

  test('all at once, in the order of the job', () => {
    const worn = {
      ...punch,
      steel: { grade: 'zinc 9' },
      profile: [{ shape: 'round', across: 22, length: '60 mm' }, { shape: 'ring' }],
      zones: [{ name: 'a', from: '0 mm', to: '9', aim: '75 HRC' }],
      process: [
        { do: 'heat', in: 'volcano', to: '900' },
        { do: 'quench', in: 'nowhere' },
      ],
      hurry: true,
    }
    expect(fieldsOf(worn)).toEqual([
      'steel.grade',
      'profile[0].across',
      'profile[1].shape',
      'profile[1].length',
      'zones[0].to',
      'zones[0].aim',
      'process[0].to',
      'process[0].in',
      'process[1].in',
      'hurry',
    ])
  })

  test('gear with a fault is no second fault where it is used', () => {
    const baths = [{ name: 'oil bucket', kind: 'medium oill' }]
    expect(fieldsOf(shop(punch, { baths }))).toEqual(['shop.baths[0].kind'])
  })

  test.each([null, undefined, 3, 'job', [], [punch], true, new Date(0), () => punch])('%s is no job', (input) => {
    expect(problemsOf(input)).toEqual([{ field: '', says: expect.stringContaining('group of fields') }])
  })
})

describe('a shop in its own file', () => {
  const named = { ...punch, shop: 'shop.yaml' }
  const text =
    'fires: [ { name: coal fire, kind: coal } ]\nbaths: [ { name: oil bucket, kind: medium oil } ]\novens: [ { name: small oven, max: 230 °C } ]\n'

  test('is read, bare or as a group called shop', () => {
    const bare = parseJob(named, { readFile: held(text) })
    const grouped = parseJob(named, { readFile: held(`shop:\n${text.replace(/^/gmu, '  ')}`) })
    expect(grouped.job).toEqual(bare.job)
    expect(bare.job.shop.ovens[0]?.maxK).toBeCloseTo(503.15)
  })

  test('whose faults name the file, and hide none of the job', () => {
    const broken = () => {
      throw new Error('no such file')
    }
    const spoiled = { ...named, piece: [] }
    expect(problemsOf(spoiled, { readFile: broken })).toEqual([
      { field: 'piece', says: expect.any(String) },
      { field: 'shop', says: expect.stringContaining('no such file') },
    ])
    expect(problemsOf(named, { readFile: held('fires: [') })[0]?.says).toContain('shop.yaml')
  })
})

describe('whatever is handed in', () => {
  const parts = fc.constantFrom(
    ...[
      'piece',
      'steel',
      'profile',
      'zones',
      'probes',
      'shop',
      'process',
      'struck',
      'grade',
      'analysis',
      'shape',
      'from',
      'to',
      'across',
      'length',
    ],
    ...[
      'do',
      'in',
      'at',
      'hold',
      'times',
      'fires',
      'baths',
      'ovens',
      'name',
      'kind',
      'part',
      'with',
      'aim',
      '__proto__',
      'constructor',
      'toString',
    ],
  )
  const texts = fc.oneof(
    fc.constantFrom(
      '22 mm',
      '5 x 12 mm',
      '900 °C',
      '3 s',
      '54..57 HRC',
      'heat',
      'quench',
      'temper',
      'flat',
      'round',
      'still air',
      'S7',
      'whole',
      '0 mm',
      '-1 mm',
    ),
    fc.string(),
    fc.string({ unit: 'binary' }),
  )
  const anything = fc.letrec((tie) => ({
    node: fc.oneof({ depthSize: 'small' }, texts, fc.double(), fc.boolean(), fc.constant(null), tie('list'), tie('fields')),
    list: fc.array(tie('node'), { maxLength: 4 }),
    fields: fc.dictionary(fc.oneof(parts, fc.string()), tie('node'), { maxKeys: 6 }),
  }))

  function onlyProblems(input: unknown): void {
    for (const options of [{}, { process: 'absent-ok' as const, readFile: held('{}') }])
      try {
        parseJob(input, options)
      } catch (error) {
        if (!(error instanceof InputProblems)) throw error
        expect(error.problems.length).toBeGreaterThan(0)
        expect(error.problems.every(({ says }) => says !== '' && says.length < 1000)).toBe(true)
      }
  }

  test('nothing but InputProblems is thrown', () => {
    fc.assert(fc.property(fc.oneof(anything.node, anything.fields, fc.anything()), onlyProblems), { numRuns: 120 })
  })

  test('nor when one part of a sound job is spoiled', () => {
    const paths = Object.keys(punch)
    fc.assert(
      fc.property(fc.constantFrom(...paths), anything.node, (key, value) => onlyProblems({ ...punch, [key]: value })),
      { numRuns: 120 },
    )
    const deep = fc.constantFrom(
      ...punch.profile.map((_, i) => ['profile', i] as const),
      ...punch.zones.map((_, i) => ['zones', i] as const),
      ...punch.process.map((_, i) => ['process', i] as const),
    )
    fc.assert(
      fc.property(deep, parts, anything.node, ([part, at], key, value) => {
        const list = punch[part].map((each, i) => (i === at ? { ...each, [key]: value } : each))
        onlyProblems({ ...punch, [part]: list })
      }),
      { numRuns: 120 },
    )
  })

  test('a group that cannot be turned into words', () => {
    onlyProblems({ ...punch, struck: { toString: {} }, process: [{ do: 'quench', agitation: { toString: {}, valueOf: null } }] })
  })

  test('a group that holds itself', () => {
    const ring: Record<string, unknown> = { ...punch }
    ring.process = [ring, ring, ring]
    ring.steel = ring
    ring.shop = ring
    onlyProblems(ring)
    onlyProblems({ ...punch, steel: { unknown: { spark: ring, source: ring, coupons: [ring, ring] } } })
  })
})
