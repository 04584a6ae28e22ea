/** The note of the revisions in which the demo season is put into an empty database; its texts are English. */
export const demoNote = 'The demo season'
