/** Opens a part of the page, given by its heading, where it is folded. */
export const unfold = (heading: Element | null) => heading?.querySelector<HTMLElement>('[aria-expanded=false]')?.click()
