import type { Page } from '@playwright/test'

/**
 * Texts within pictures whose contrast (WCAG 2.2, 1.4.3: relative luminance) to what is drawn under their middle is less
 * than `least`. The scan leaves these out: it can not tell what lies under a text that stands over a shape.
 */
export const faintInPictures = (page: Page, least: number): Promise<string[]> =>
  page.evaluate((least) => {
    type Colour = [number, number, number, number]
    const pixel = document.createElement('canvas').getContext('2d', { willReadFrequently: true })!
    const colour = (text: string, opacity = 1): Colour => {
      pixel.clearRect(0, 0, 1, 1)
      pixel.fillStyle = text
      pixel.fillRect(0, 0, 1, 1)
      const [red, green, blue, alpha] = pixel.getImageData(0, 0, 1, 1).data as unknown as Colour
      return [red, green, blue, (alpha / 255) * opacity]
    }
    const over = (top: Colour, under: Colour): Colour => {
      const mixed = (at: 0 | 1 | 2) => top[at] * top[3] + under[at] * (1 - top[3])
      return [mixed(0), mixed(1), mixed(2), 1]
    }
    const luminance = ([red, green, blue]: Colour) => {
      const channel = (value: number) => (value <= 10.31475 ? value / 3294.6 : ((value / 255 + 0.055) / 1.055) ** 2.4)
      return 0.2126 * channel(red) + 0.7152 * channel(green) + 0.0722 * channel(blue)
    }
    const ratio = (one: Colour, other: Colour) => {
      const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number]
      return (light + 0.05) / (dark + 0.05)
    }
    /** Of an element and all that holds it, up to the page. */
    const opacityOf = (element: Element): number => {
      const own = Number(getComputedStyle(element).opacity)
      return element.parentElement ? own * opacityOf(element.parentElement) : own
    }
    const ground = (element: Element | null): Colour => {
      if (!element) return colour('white')
      const own = colour(getComputedStyle(element).backgroundColor)
      return own[3] > 0.99 ? own : over(own, ground(element.parentElement))
    }
    const under = (text: SVGTextElement): Colour => {
      const picture = text.ownerSVGElement!
      const { left, top, width, height } = text.getBoundingClientRect()
      const middle = new DOMPoint(left + width / 2, top + height / 2)
      return [...picture.querySelectorAll<SVGGeometryElement>('rect, path, circle, polygon, ellipse')]
        .filter((shape) => shape.compareDocumentPosition(text) & Node.DOCUMENT_POSITION_FOLLOWING)
        .filter((shape) => !shape.closest('defs, clipPath, pattern') && shape.checkVisibility())
        .reduce((below, shape) => {
          const { fill, fillOpacity } = getComputedStyle(shape)
          const place = shape.getScreenCTM()
          // A hatching leaves most of its ground free.
          if (fill === 'none' || fill.startsWith('url') || !place) return below
          if (!shape.isPointInFill(middle.matrixTransform(place.inverse()))) return below
          return over(colour(fill, Number(fillOpacity) * opacityOf(shape)), below)
        }, ground(picture))
    }
    return [...document.querySelectorAll<SVGTextElement>('main svg text')]
      .filter((text) => text.textContent?.trim() && text.checkVisibility() && text.getBoundingClientRect().width > 1)
      .flatMap((text) => {
        const below = under(text)
        const { fill, fillOpacity } = getComputedStyle(text)
        const found = ratio(over(colour(fill, Number(fillOpacity) * opacityOf(text)), below), below)
        return found < least ? [`${text.textContent}: ${found.toFixed(2)} : 1`] : []
      })
  }, least)
