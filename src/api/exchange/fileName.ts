/** A name that every file system takes, from an id. */
export const fileName = (id: string): string => id.replace(/[^\w-]+/g, '-').slice(0, 60) || 'event'
