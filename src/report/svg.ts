/** Attributes of an element; those that are undefined are left out, numbers are written to a hundredth. */
export type Attributes = Readonly<Record<string, string | number | undefined>>

/** Text that people typed, safe inside an element or an attribute. */
export function escapeText(text: string): string {
  return printable(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;')
}

/** Control characters show as a blank: they have no business in a name and can upset a page or a terminal. */
export function printable(text: string): string {
  return text.replace(/\p{Cc}|\p{Cf}/gu, ' ')
}

/** One element. `inside` is markup already, so text goes through `escapeText` first (`label` does it). */
export function element(name: string, attributes: Attributes = {}, ...inside: readonly string[]): string {
  const written = Object.entries(attributes)
    .flatMap(([key, value]) =>
      value === undefined ? [] : [` ${key}="${escapeText(typeof value === 'number' ? decimal(value) : value)}"`],
    )
    .join('')
  return inside.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${inside.join('')}</${name}>`
}

/** A line of text at a point. */
export function label(xPx: number, yPx: number, text: string, attributes: Attributes = {}): string {
  return element('text', { x: xPx, y: yPx, ...attributes }, escapeText(text))
}

export function line(x1: number, y1: number, x2: number, y2: number, kind: string): string {
  return element('line', { x1, y1, x2, y2, class: kind })
}

/** A path through points; `closed` joins the last to the first. */
export function pathThrough(points: readonly (readonly [number, number])[], closed = false): string {
  return points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${decimal(x)} ${decimal(y)}`).join('') + (closed ? 'Z' : '')
}

/** A whole picture with its name and what it shows in words, for those who cannot see it. */
export function picture(
  id: string,
  size: { readonly widthPx: number; readonly heightPx: number },
  title: string,
  description: string,
  ...inside: readonly string[]
): string {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'picture',
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
      width: size.widthPx,
      height: size.heightPx,
      viewBox: `0 0 ${decimal(size.widthPx)} ${decimal(size.heightPx)}`,
    },
    element('title', { id: `${id}-title` }, escapeText(title)),
    element('desc', { id: `${id}-desc` }, escapeText(description)),
    ...inside,
  )
}

/** Room that a text takes at most, in the widest of the faces that the page may meet. */
export function textWidthPx(text: string, sizePx: number): number {
  let ems = 0
  for (const letter of text) ems += /[iljt.,:;'| ]/u.test(letter) ? 0.4 : /[A-Zmw⌀°—]/u.test(letter) ? 0.85 : 0.64
  return ems * sizePx
}

function decimal(value: number): string {
  return String(Math.round(value * 100) / 100)
}
