import type { Locator, Page } from 'playwright-core'

export interface PlacePx {
  readonly x: number
  readonly y: number
}

/** The piece over its bath: what can be taken hold of, and what stands on the metal. */
export function drawing(page: Page) {
  const region = page.getByRole('region', { name: 'The piece over its bath' })
  const handle = (name: RegExp): Locator => region.getByRole('slider', { name })
  return {
    region,
    handle,
    /** The figure beside the piece that can be typed over. */
    figure: (name: RegExp) => region.getByRole('button', { name }),
    /** What stands at the handle that is held. */
    held: region.getByRole('status'),
    metal: region.getByRole('img', { name: 'The metal, cut open' }),
    place: region.getByRole('slider', { name: 'A place in the metal' }),
    /** Takes a handle, moves it in small steps, and keeps holding it. */
    pull: async (which: Locator, rightPx: number, upPx: number): Promise<void> => {
      const { x, y } = await middleOf(which)
      await page.mouse.move(x, y)
      await page.mouse.down()
      await page.mouse.move(x + rightPx, y - upPx, { steps: 12 })
    },
    letGo: () => page.mouse.up(),
    /** The same by one finger, which then leaves the glass. */
    swipe: async (which: Locator, rightPx: number, upPx: number): Promise<void> => {
      const { x, y } = await middleOf(which)
      const glass = await page.context().newCDPSession(page)
      const finger = (type: 'touchStart' | 'touchMove' | 'touchEnd', share = 0) =>
        glass.send('Input.dispatchTouchEvent', {
          type,
          touchPoints: type === 'touchEnd' ? [] : [{ x: x + share * rightPx, y: y - share * upPx }],
        })
      await finger('touchStart')
      for (let part = 1; part <= 10; part++) await finger('touchMove', part / 10)
      await finger('touchEnd')
      await glass.detach()
    },
    /** The picture of the metal as it stands, in one short text. */
    painted: () =>
      region.locator('canvas').evaluate((canvas) => {
        let sum = 0
        for (const letter of (canvas as HTMLCanvasElement).toDataURL()) sum = (sum * 31 + letter.charCodeAt(0)) | 0
        return sum
      }),
  }
}

export async function middleOf(which: Locator): Promise<PlacePx> {
  const box = await which.boundingBox()
  if (box === null) throw new Error(`not in sight: ${which}`)
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}
