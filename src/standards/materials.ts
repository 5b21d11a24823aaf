import { type KienzleRow, kienzleGroup, kienzleGroups } from './kienzle.ts'
import type { Table } from './table.ts'

/** [least, most, used], degrees. */
type LeastMostUsed = readonly [least: number, most: number, used: number]

/** Strength, N/mm2: the lower end where a standard prints a range. */
interface Strength {
  readonly yield?: number
  readonly tensile?: number
  readonly source: string
}

/** A material that bores are cut in, with how a shaping tool of high-speed steel is ground for it. */
export interface WorkMaterial {
  readonly name: string
  /** Other names that mean the same, in lower case. */
  readonly aliases: readonly string[]
  readonly kienzle: KienzleRow
  readonly rake: LeastMostUsed
  readonly endRelief: LeastMostUsed
  readonly sideRelief: LeastMostUsed
  /** Default chip per pass, mm. */
  readonly infeed: number
  readonly strength?: Strength
  /** kg for a dm³, the upper end of its kind. */
  readonly density: number
  readonly source: string
}

const angles =
  'rake and relief of high-speed steel tools for slotting and shaping from memory (workshop texts), agreeing with 3 to 5° of relief in a US Navy training manual; angle used and chip per pass: common practice, no source'
/** Each side of a keyway tool. From memory (workshop texts). */
const sideRelief: LeastMostUsed = [1.5, 3, 3]

/** Of a VDI 3323 group: aluminium is 21 to 25, copper and its alloys 26 to 28, before them iron and steel. kg/dm³, from memory (handbooks). */
const densityOf = (group: number): number => (group < 21 ? 7.9 : group <= 25 ? 2.8 : 8.8)

const material = (
  name: string,
  aliases: readonly string[],
  group: number,
  rake: LeastMostUsed,
  endRelief: LeastMostUsed,
  infeed: number,
  strength: Strength,
): WorkMaterial => {
  const kienzle = kienzleGroup(group)
  if (!kienzle) throw new Error(`no VDI 3323 group ${group}`)
  const source = `${angles}; cutting force: ${kienzleGroups.source}; density from memory (handbooks)`
  return { name, aliases, kienzle, rake, endRelief, sideRelief, infeed, strength, density: densityOf(group), source }
}

const shigley = 'from memory (Shigley Table A-20)'
const gradeName = 'from memory; the tensile strength is what the grade is named for'

/** Columns: name, other names, VDI 3323 group, rake, end relief, chip per pass, strength. */
export const workMaterials: Table<WorkMaterial> = {
  source: angles,
  scope: 'unhardened steels, irons, aluminium, brass and bronze',
  rows: [
    material(
      'mild steel',
      ['steel', 'low carbon steel', '1018', '1020', '12l14', 's275', 'en3'],
      1,
      [10, 15, 10],
      [4, 6, 5],
      0.02,
      { yield: 275, tensile: 410, source: 'S275JR under 16 mm: table of EN materials on a tribology reference page' },
    ),
    material(
      'structural steel',
      ['s235', 's235jr', 'st37', 'st 37', 'ss400', 'a36'],
      1,
      [10, 15, 10],
      [4, 6, 5],
      0.02,
      { yield: 235, tensile: 360, source: 'S235JR under 16 mm: table of EN materials on a tribology reference page' },
    ),
    material(
      'medium carbon steel',
      ['carbon steel', '1040', '1045', 'c45', 's45c', 'en8'],
      2,
      [8, 12, 10],
      [4, 6, 5],
      0.02,
      { yield: 310, tensile: 570, source: `AISI 1045 hot rolled: ${shigley}` },
    ),
    material(
      'alloy steel',
      ['low alloy steel', '4140', '42crmo4', '41crmo4', 'en19', 'scm440'],
      6,
      [5, 8, 6],
      [4, 6, 5],
      0.02,
      {
        yield: 415,
        tensile: 600,
        source: 'yield of AISI 4140 annealed from memory; tensile strength of VDI 3323 group 6',
      },
    ),
    material(
      'stainless steel',
      ['stainless', 'austenitic stainless', '303', '304', '316', '18-8'],
      14,
      [8, 12, 10],
      [5, 6, 5],
      0.02,
      { yield: 215, tensile: 505, source: 'AISI 304 annealed, from memory' },
    ),
    material(
      'grey iron',
      ['gray iron', 'cast iron', 'grey cast iron', 'gray cast iron', 'gjl-200', 'gg20', 'gg-20', 'class 30'],
      17,
      [3, 6, 5],
      [4, 5, 5],
      0.025,
      { tensile: 200, source: `EN-GJL-200: ${gradeName}` },
    ),
    material(
      'hard grey iron',
      ['hard gray iron', 'hard cast iron', 'pearlitic iron', 'gjl-250', 'gg25', 'gg-25', 'class 40'],
      18,
      [3, 6, 5],
      [4, 5, 5],
      0.025,
      { tensile: 250, source: `EN-GJL-250: ${gradeName}` },
    ),
    material(
      'ductile iron',
      ['nodular iron', 'sg iron', 'spheroidal iron', 'gjs-400-15', 'ggg40', 'ggg-40'],
      16,
      [6, 10, 8],
      [4, 6, 5],
      0.025,
      { yield: 250, tensile: 400, source: 'EN-GJS-400-15, from memory' },
    ),
    material('aluminium', ['aluminum', '6061-o'], 21, [20, 30, 20], [6, 8, 7], 0.05, {
      yield: 55,
      tensile: 124,
      source: '6061-O, from memory',
    }),
    material('soft aluminium', ['soft aluminum', '1100', '3003'], 21, [20, 30, 20], [6, 8, 7], 0.05, {
      yield: 34,
      tensile: 90,
      source: 'AA 1100-O, the softer of the two, from memory',
    }),
    material(
      'aluminium, heat-treated',
      ['aluminum, heat-treated', '6061', '6061-t6', '6082', '2024', '7075'],
      22,
      [20, 30, 20],
      [6, 8, 7],
      0.05,
      { yield: 275, tensile: 310, source: `EN AW-6061-T6: ${shigley}` },
    ),
    material('brass', ['free cutting brass', 'c360', 'cuzn39pb3', 'cz121'], 27, [0, 3, 0], [4, 6, 5], 0.04, {
      yield: 250,
      tensile: 430,
      source: 'CuZn39Pb3, from memory',
    }),
    material('bronze', ['phosphor bronze', 'cusn8'], 28, [0, 5, 0], [4, 6, 5], 0.04, {
      yield: 220,
      tensile: 400,
      source: 'CuSn8, from memory',
    }),
    material('bearing bronze', ['cast bronze', 'gunmetal', 'c932', 'sae 660'], 28, [0, 5, 0], [4, 6, 5], 0.04, {
      yield: 125,
      tensile: 240,
      source: 'C93200 as cast, from memory',
    }),
  ],
}

const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, ' ')

/** Whether aluminium, copper or an alloy of theirs: groups 21 and up of VDI 3323. */
export const isNonferrous = ({ kienzle }: WorkMaterial): boolean => kienzle.group > 20

/** The work material that a machinist means by this name (`grey iron`, `gray iron`, `1018`), upper or lower case; `undefined` if none. */
export const workMaterial = (name: string): WorkMaterial | undefined => {
  const known = byOwnName.get(name)
  if (known) return known
  const asked = plain(name).replace(/^(aisi|sae|en-?aw|en) (?=.)/, '')
  return workMaterials.rows.find(
    (row) => row.name === asked || row.aliases.includes(asked) || row.aliases.includes(plain(name)),
  )
}

const byOwnName: ReadonlyMap<string, WorkMaterial> = new Map(workMaterials.rows.map((row) => [row.name, row]))

/** Every name that `workMaterial` knows, each row's own name first. */
export const workMaterialNames: readonly string[] = workMaterials.rows.flatMap((row) => [row.name, ...row.aliases])

/** A material that bars and bushings are made of. N/mm2. */
export interface BarMaterial {
  readonly name: string
  readonly aliases: readonly string[]
  readonly yield: number
  readonly source: string
}

/** Materials for cutter bars and bushings, softest first. */
export const barMaterials: Table<BarMaterial> = {
  source: 'yields from memory but for S275JR',
  scope: 'bars to about 60 mm as bought, not hardened',
  rows: [
    {
      name: 'mild steel',
      aliases: ['1018', 's275'],
      yield: 275,
      source: 'S275JR under 16 mm: table of EN materials on a tribology reference page',
    },
    {
      name: 'drill rod',
      aliases: ['silver steel', 'o1'],
      yield: 370,
      source: 'O1 or silver steel, annealed: from memory',
    },
    {
      name: '4140 pre-hardened',
      aliases: ['4140', '42crmo4'],
      yield: 655,
      source: 'AISI 4140 at 28 to 32 HRC: from memory',
    },
  ],
}

/** The bar material of this name, or `undefined`. */
export const barMaterial = (name: string): BarMaterial | undefined =>
  barMaterials.rows.find((row) => row.name === plain(name) || row.aliases.includes(plain(name)))
