/** By hand, `THOROUGH=1 npm test`: every case, as before a release. Otherwise one of each kind. */
export const thorough = process.env['THOROUGH'] !== undefined
