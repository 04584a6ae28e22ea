const address = '/api/schemas/game.json'

/** The published form of a game's file. */
export const SchemaLink = () => (
  <a href={address} target="_blank" rel="noreferrer">
    {address}
  </a>
)
