import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { deflateRawSync, inflateRawSync } from 'node:zlib'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { packed } from './link-packing.ts'
import { PRIMER_1 } from './link-primer.ts'
import { holdsPlan, jobFromLink, planLink } from './plan-link.ts'
import { InputProblems } from './problems.ts'
import { readJobText } from './read-job.ts'

const BASE = 'http://localhost:4615/'
const EXAMPLES = fileURLToPath(new URL('../../examples/', import.meta.url))
const read = (name: string) => readJobText(readFileSync(`${EXAMPLES}${name}`, 'utf8'), name) as Record<string, unknown>
const examples = readdirSync(EXAMPLES)
  .filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
  .map((name) => [name, { ...read(name), shop: read('shop.yaml') }] as const)

async function fault(address: string): Promise<string> {
  try {
    await jobFromLink(address)
  } catch (error) {
    if (error instanceof InputProblems) return error.problems.map(({ field, says }) => `${field}: ${says}`).join()
    throw error
  }
  throw new Error('read without a fault')
}

const PIN = { piece: 'gauge pin', steel: { grade: 'O1' }, profile: [{ shape: 'round', across: '3/8 in', length: '7/8 in' }] }

describe('what goes into a link comes out of it', () => {
  test.each(examples)('%s, shop and all, in less than a quarter of its letters', async (_, job) => {
    const link = await planLink(BASE, job)
    expect(link).toMatch(/^http:\/\/localhost:4615\/#plan=1\.[\w-]+$/u)
    expect(await jobFromLink(link)).toEqual(job)
    expect(link.length).toBeLessThan(240)
    expect(link.length * 4).toBeLessThan(JSON.stringify(job).length)
  })

  test('any document', async () => {
    await fc.assert(
      fc.asyncProperty(fc.json({ maxDepth: 4 }), async (json) => {
        const job: unknown = JSON.parse(json)
        expect(await jobFromLink(await planLink(BASE, job))).toEqual(job)
      }),
      { numRuns: 150 },
    )
  })

  test('long and repetitive text, so that lengths and distances of every size are met', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.string({ unit: 'grapheme', maxLength: 30 }), fc.integer({ min: 1, max: 400 })), { maxLength: 12 }),
        async (runs) => {
          const job = { piece: runs.map(([text, times]) => text.repeat(times)).join('') }
          expect(await jobFromLink(await planLink(BASE, job))).toEqual(job)
        },
      ),
      { numRuns: 40 },
    )
    const far = {
      first: 'an eye drift of 25 mm',
      between: Array.from({ length: 9000 }, (_, i) => i * i),
      last: 'an eye drift of 25 mm',
    }
    expect(await jobFromLink(await planLink(BASE, far))).toEqual(far)
  })

  test('the block is plain deflate, for any inflater that is given the primer', () => {
    const bytes = new TextEncoder().encode(JSON.stringify(PIN))
    const primer = new TextEncoder().encode(PRIMER_1)
    expect(inflateRawSync(packed(bytes, primer), { dictionary: primer }).toString()).toBe(JSON.stringify(PIN))
  })

  test('a link on paper opens for ever', async () => {
    expect(await jobFromLink('#plan=1.Jd9ZQxT66YmloJoQ7HqM0h9SYOOrw5AaGRZoVQ60qgLaBgA')).toEqual(PIN)
  })

  test('the whole address, the part behind #, one of several parts, or broken into lines by a letter', async () => {
    const link = await planLink('https://bench.example/piece/7?units=inch#old', PIN)
    expect(link).toMatch(/^https:\/\/bench\.example\/piece\/7\?units=inch#plan=1\./u)
    const [, fragment = ''] = link.split('#')
    const lines = `${link.slice(0, 40)}\r\n  ${link.slice(40)}\n`
    for (const form of [
      `#${fragment}`,
      fragment,
      `#theme=slate&${fragment}`,
      `${link}&card=A6`,
      lines,
      link.replace('plan=', 'plan%3D'),
    ]) {
      expect(holdsPlan(form)).toBe(true)
      expect(await jobFromLink(form)).toEqual(PIN)
    }
    for (const other of ['', BASE, '#', '#plan', '#plan=', '#floorplan=1.abc']) expect(holdsPlan(other)).toBe(false)
  })
})

describe('a link that is none says what to do', () => {
  test('foreign and newer', async () => {
    expect(await fault('https://bench.example/#route=1')).toBe(
      'link: no plan is in this address: "#plan=" is missing; copy the whole link, to its very end',
    )
    expect(await fault('#plan=2.AAAA')).toContain(
      'made by a newer Quenchwright (form 2; this one reads 1); bring this one up to date',
    )
    for (const odd of [
      '#plan=0.AAAA',
      '#plan=1.',
      '#plan=1.AAAA',
      '#plan=1.A',
      '#plan=1.////',
      '#plan=1.Jd9ZQxT66YmloJoQ7HqM0h9SYOOrw5AaGRZoVQ60qgLaBgA:and-more',
    ])
      expect(await fault(odd)).toContain('cut short or changed on its way; copy all of it once more')
  })

  test('cut short anywhere, or with any one letter changed: never another job', async () => {
    const link = await planLink('', PIN)
    const start = link.indexOf('.') + 1
    const last = link.length - 1
    for (let at = start; at < link.length; at++) {
      expect(await fault(link.slice(0, at))).toContain('cut short')
      const other = link[at] === 'x' ? 'y' : 'x'
      const changed = `${link.slice(0, at)}${other}${link.slice(at + 1)}`
      // The last letter may hold bits that stand for nothing.
      if (at === last)
        await jobFromLink(changed).then(
          (job) => expect(job).toEqual(PIN),
          (error) => expect(error).toBeInstanceOf(InputProblems),
        )
      else expect(await fault(changed)).toContain('cut short or changed')
    }
  })

  test('what unpacks to more than a job is refused before it is unpacked, going in and coming out', async () => {
    const bomb = deflateRawSync(Buffer.alloc(60_000_000, 32), { level: 9 })
    const before = process.memoryUsage().rss
    expect(await fault(`#plan=1.AAAA${bomb.subarray(0, 50_000).toString('base64url')}`)).toContain('unpacks to more than 200 kB')
    expect(await fault(`#plan=1.${'A'.repeat(500_000)}`)).toContain('unpacks to more than 200 kB')
    expect(process.memoryUsage().rss - before).toBeLessThan(60_000_000)
    await expect(planLink(BASE, { piece: 'é'.repeat(110_000) })).rejects.toThrow(
      'a job of 221 kB is too large for a link (at most 200 kB)',
    )
    await expect(planLink(BASE, undefined)).rejects.toThrow('there is no job')
  })
})
