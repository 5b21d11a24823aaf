/** How many jobs of any kind a test tries: few each time, many by hand with `THOROUGH=1 npx vitest run tests/card`. */
export const runs = (few: number, many: number): number => (process.env['THOROUGH'] === undefined ? few : many)
