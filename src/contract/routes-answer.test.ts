import { describe, expect, it } from 'vitest'
import { forecast } from './forecast-answer.ts'
import { InputProblems } from './problems.ts'
import { proposeRoutes } from './routes-answer.ts'

const OIL = { name: 'oil drum', kind: 'medium oil', volume: '20 L', depth: '300 mm', temperature: '50 °C' }
const WATER = { name: 'slack tub', kind: 'water', volume: '60 L', depth: '400 mm', temperature: '20 °C' }
const SHOP = {
  fires: [{ name: 'gas forge', kind: 'gas' }],
  baths: [OIL, WATER],
  ovens: [{ name: 'small oven', max: '230 °C', reads: '8 °C low', swing: '15 °C' }],
}
const SPRING = {
  piece: 'latch spring',
  steel: { grade: '5160' },
  profile: [{ shape: 'flat', across: '1/8 x 1 in', length: '120 mm' }],
  zones: [{ name: 'leaf', from: '0 mm', to: '120 mm', aim: '42..48 HRC' }],
  shop: { ...SHOP, ovens: [{ name: 'oven', max: '500 °C', reads: '5 °C high', swing: '8 °C' }] },
}
const PUNCH = {
  piece: 'slot punch',
  struck: true,
  steel: { grade: 'S7' },
  profile: [{ shape: 'round', across: '18 mm', length: '150 mm' }],
  zones: [{ name: 'working end', from: '0 mm', to: '30 mm', aim: '54..58 HRC' }],
  shop: SHOP,
}
/** As few members as still tell good from bad. */
const FEW = { members: 60 }

interface Step {
  readonly do: string
  readonly in?: string
  readonly at?: string
  readonly times?: number
}
const stepsOf = (process: readonly unknown[]): readonly Step[] => process as readonly Step[]

describe('a plan for a spring in a shop with a hot oven', () => {
  const plan = proposeRoutes(SPRING, FEW)
  const [best] = plan.routes

  it('normalises, quenches in oil and tempers within the oven', () => {
    expect(best).toBeDefined()
    expect(plan.none).toBeUndefined()
    const steps = stepsOf(best!.process)
    expect(steps.map((step) => step.do)).toEqual(['normalise', 'heat', 'carry', 'quench', 'temper'])
    expect(steps[3]!.in).toBe('oil drum')
    const dialC = Number.parseFloat(steps[4]!.at ?? '')
    expect(dialC).toBeGreaterThan(400)
    expect(dialC).toBeLessThanOrEqual(500)
    expect(dialC % 5).toBeCloseTo(0, 6)
    expect(best!.holdsGear).toBe(true)
    expect(best!.chance).toBeGreaterThan(0.5)
  })

  it('proposes a process that reads back and is forecast to the same chance', () => {
    const again = forecast({ ...SPRING, process: best!.process }, { grade: 'draft', ...FEW })
    expect(again.zones[0]!.chance).toBeCloseTo(best!.forecast.zones[0]!.chance, 6)
  })

  it('is the same every time', () => {
    expect(JSON.stringify(proposeRoutes(SPRING, FEW).routes)).toBe(JSON.stringify(plan.routes))
  })

  it('says none, and why, where the oven cannot reach', () => {
    const { routes, none } = proposeRoutes({ ...SPRING, shop: SHOP }, FEW)
    expect(routes).toEqual([])
    expect(none?.because).toMatch(/oven/)
    expect(none?.because).toMatch(/°C/)
    expect(none?.nearest).toMatch(/leaf \d+ HRC/)
  })

  it('sets dials by tens of Fahrenheit in an inch shop', () => {
    const inch = proposeRoutes(SPRING, { ...FEW, units: 'inch' })
    const at = stepsOf(inch.routes[0]!.process).find((step) => step.do === 'temper')?.at ?? ''
    expect(at).toMatch(/^\d+0 °F$/)
  })
})

describe('a plan for a struck tool of air-hardening steel', () => {
  const plan = proposeRoutes(PUNCH, FEW)

  it('never normalises it, hardens it in air and tempers it twice', () => {
    expect(plan.routes.length).toBeGreaterThan(0)
    for (const { process } of plan.routes) {
      const steps = stepsOf(process)
      expect(steps.some((step) => step.do === 'normalise')).toBe(false)
      expect(steps.find((step) => step.do === 'temper')?.times).toBe(2)
    }
    expect(stepsOf(plan.routes[0]!.process).find((step) => step.do === 'quench')?.in).toBe('still air')
    expect(plan.refused.some(({ says, because }) => says === 'slack tub' && /crack/.test(because))).toBe(true)
  })

  it('plans and checks the struck end though nobody asked', () => {
    for (const { forecast: each } of plan.routes) {
      const struck = each.zones.find(({ name }) => name === 'struck end')
      expect(struck?.assumed).toBe(true)
      expect(struck?.chance).toBeGreaterThan(0.6)
    }
  })
})

describe('baths', () => {
  it('takes oil where water is at hand too and oil will do', () => {
    const { routes } = proposeRoutes(
      {
        piece: 'scraper',
        steel: { grade: '1084' },
        profile: [{ shape: 'flat', across: '3 x 25 mm', length: '100 mm' }],
        zones: [{ name: 'blade', from: '0 mm', to: '100 mm', aim: '57..62 HRC' }],
        shop: SHOP,
      },
      FEW,
    )
    expect(stepsOf(routes[0]!.process).find((step) => step.do === 'quench')?.in).toBe('oil drum')
  })

  it('does not plunge a piece into a bath that is shallower than it', () => {
    const tray = { ...OIL, name: 'oil tray', depth: '60 mm' }
    const { routes, none } = proposeRoutes({ ...SPRING, shop: { ...SPRING.shop, baths: [tray] } }, FEW)
    expect(routes).toEqual([])
    expect(none?.because).toMatch(/too shallow/)
  })
})

describe('nothing to plan', () => {
  it('refuses a job without zones, and names the field', () => {
    const { zones: _zones, ...without } = SPRING
    expect(() => proposeRoutes(without)).toThrow(InputProblems)
    try {
      proposeRoutes(without)
    } catch (error) {
      expect((error as InputProblems).problems.map(({ field }) => field)).toEqual(['zones'])
    }
  })

  it('leaves a piece soft that nobody wants hard', () => {
    const soft = { ...SPRING, zones: [{ name: 'all', from: '0 mm', to: '120 mm', aim: 'at most 30 HRC' }] }
    expect(stepsOf(proposeRoutes(soft, FEW).routes[0]!.process).map((step) => step.do)).toEqual(['anneal'])
  })
})
