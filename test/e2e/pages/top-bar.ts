import type { Page } from 'playwright-core'

/** The bar over every screen: the places, and the switches of the device. */
export function topBar(page: Page) {
  const switches = page.getByRole('banner')
  return {
    goTo: async (place: 'Bench' | 'Rack' | 'Shop' | 'Proof') => {
      await page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: place }).click()
      await page.waitForURL(`**/${place.toLowerCase()}`)
      await page.getByRole('main').getByRole('heading', { level: 1 }).first().waitFor()
    },
    inches: () => switches.getByLabel('in °F').check(),
    metric: () => switches.getByLabel('mm °C').check(),
    /** By day, or in a dim shop. */
    ground: async (wanted: 'paper' | 'slate') => {
      const now = await page.evaluate(() => document.documentElement.dataset.ground)
      if (now !== wanted) await switches.getByRole('button', { name: wanted === 'slate' ? 'Dim' : 'Bright' }).click()
    },
  }
}
