import type { Locator, Page } from 'playwright-core'

/** What each of them says, in one line, as it is seen. */
export async function eachSays(which: Locator): Promise<string[]> {
  return (await which.allInnerTexts()).map((words) => words.replaceAll(/\s+/gu, ' ').trim())
}

/** What it says, in one line, as it is seen. */
export async function says(which: Locator): Promise<string> {
  await which.first().waitFor()
  return (await eachSays(which)).join(' ')
}

/** Words that run out of the page at its sides, or are cut off by the box that they stand in; one line each. What is for the ear alone is passed over. */
export function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const told: string[] = []
    const root = document.documentElement
    if (root.scrollWidth > root.clientWidth) told.push(`the page is ${root.scrollWidth - root.clientWidth} px too wide`)
    const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = words.nextNode(); node !== null; node = words.nextNode()) {
      const holder = node.parentElement
      if (holder === null || node.textContent?.trim() === '' || holder.closest('style, select, canvas') !== null) continue
      const range = document.createRange()
      range.selectNodeContents(node)
      const box = range.getBoundingClientRect()
      const { visibility, webkitLineClamp } = getComputedStyle(holder)
      // A flag that ends in three dots says the rest when it is opened.
      if (box.width === 0 || visibility === 'hidden' || webkitLineClamp !== 'none') continue
      let unseen = false
      let [left, right] = [0, root.clientWidth]
      let [top, bottom] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
      for (let each: Element | null = holder; each !== null && each !== document.body; each = each.parentElement) {
        const { overflowX, overflowY, clipPath } = getComputedStyle(each)
        unseen ||= clipPath === 'inset(50%)'
        const clip = each.getBoundingClientRect()
        // What can be scrolled to is not cut off; beyond such a box nothing more is asked.
        if (/auto|scroll/u.test(overflowX + overflowY)) {
          ;[left, right] = overflowX === 'hidden' ? [clip.left, clip.right] : [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
          ;[top, bottom] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
          break
        }
        if (/hidden|clip/u.test(overflowX)) [left, right] = [Math.max(left, clip.left), Math.min(right, clip.right)]
        if (/hidden|clip/u.test(overflowY)) [top, bottom] = [Math.max(top, clip.top), Math.min(bottom, clip.bottom)]
      }
      const out = Math.max(left - box.left, box.right - right, top - box.top, box.bottom - bottom)
      if (out > 2 && !unseen) told.push(`"${node.textContent?.trim().slice(0, 40)}" is cut off by ${Math.round(out)} px`)
    }
    return told
  })
}

/** Things to touch that are under 44 px either way; one line each. What is held on the drawing is met from further off than it is drawn. */
export function tooSmallToTouch(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const touched = 'button, a[href], input:not([type=radio], [type=checkbox]), select, summary, label:has(input)'
    return [...document.querySelectorAll<HTMLElement>(touched)].flatMap((each) => {
      const box = each.getBoundingClientRect()
      if (box.width === 0 || getComputedStyle(each).clipPath === 'inset(50%)') return []
      const wider = getComputedStyle(each, '::after')
      const [width, height] = (['width', 'height'] as const).map((way) =>
        Math.max(box[way], wider.position === 'absolute' ? Number.parseFloat(wider[way]) : 0),
      ) as [number, number]
      if (width >= 43.5 && height >= 43.5) return []
      const words = each.getAttribute('aria-label') ?? each.textContent?.trim().slice(0, 30)
      return [`${each.tagName.toLowerCase()}.${each.className} "${words}": ${Math.round(width)} x ${Math.round(height)} px`]
    })
  })
}

/** The page has seen its new size, and drawn itself to it. */
export async function drawnAnew(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(resolve)))),
  )
}

/** By Tab from where the focus is to there; gives the stops on the way whose focus cannot be seen. */
export async function tabTo(page: Page, there: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<string[]> {
  const unseen: string[] = []
  for (let stops = 0; stops < MOST_STOPS; stops++) {
    await page.keyboard.press(key)
    const stop = await page.evaluate(() => {
      const now = document.activeElement
      if (now === null || now === document.body) return undefined
      const shows = (of: Element, part?: string): boolean => {
        const { outlineStyle, outlineWidth } = getComputedStyle(of, part)
        return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2
      }
      const seen = [now, now.closest('label')].some((of) => of !== null && (shows(of) || shows(of, '::before')))
      return {
        seen,
        says: `${now.tagName.toLowerCase()} ${now.getAttribute('aria-label') ?? now.textContent?.trim().slice(0, 40)}`,
      }
    })
    if (stop?.seen === false) unseen.push(stop.says)
    if (await there.evaluate((each) => each === document.activeElement)) return unseen
  }
  throw new Error(`no way by ${key} to ${there}`)
}

const MOST_STOPS = 80
