/** Whether the tests that take minutes run too (`npm run test:long`): a second theme, or a flow whose parts are tested elsewhere. */
export const inLongForm = process.env['LONG_TESTS'] === '1'
