/** How long a link is good that makes somebody the first lead (h). */
export const claimHours = 24

/** The link itself. Behind the # it stays in the browser: no server, proxy or log sees it. */
export const claimAddress = (server: string, token: string): string => `${server}/claim#${token}`
