/**
 * How many random jobs a property is tried on: so many in every test run, many times as many where RUNS says so
 * (`RUNS=10 npx vitest run tests/oracles --testTimeout 3600000`), from another seed where SEED does.
 */
const told = (name: string, otherwise: number): number => {
  const value = Number(process.env[name])
  return Number.isFinite(value) && value > 0 ? value : otherwise
}

export const runs = (usual: number): { readonly numRuns: number } => ({ numRuns: Math.round(usual * told('RUNS', 1)) })
export const seed = (usual: number): number => told('SEED', usual)
