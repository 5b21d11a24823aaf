import { plain, type Block, type Cell, isWords, type Table, type Tick as CardTick } from '../../card/document.ts'
import { measureTheSlot } from '../../card/measure-slot.ts'
import { Heading } from '../parts/heading.tsx'
import { countOf, lastAnswer } from './answers.ts'
import { exportCsv, exportJson, exportYaml } from './export.ts'
import { goTo } from './going.ts'
import { type Job, measuredAs, gateKey } from './job.ts'
import { Back, Blank, Go, Said, Tick, Told } from './parts.tsx'
import { beginAgain, setValue, valueOf } from './record.ts'

/** What is missing is added by what is measured, as often as it takes. */
export const Add = ({ now }: { now: Job }) => {
  const { plan, says, wanted } = now
  if (!plan || !wanted) return null
  const lastKey = gateKey(plan.cuts.length - 1, (plan.cuts.at(-1)?.gates.length ?? 1) - 1)
  const at = valueOf('add')
  const before = at ?? valueOf(lastKey)
  // The dial stands where the last measurement left it; that measurement says where it is to go.
  const start = valueOf('add-from') ?? valueOf(lastKey)
  const stood = start?.dial ?? plan.bores.reading
  const asked = start && lastAnswer(now, stood, start.mm)
  const dial = asked?.add ?? stood
  const answer = at && lastAnswer(now, dial, at.mm)
  const springs = plan.target.springPasses
  const again = (): void => {
    if (!at) return
    setValue('add-from', { text: at.text, mm: at.mm, dial })
    setValue('add', undefined)
  }
  return (
    <>
      <Heading id="screen" aside={says.between(wanted.least, wanted.most)}>
        Add what is missing
      </Heading>
      <div class="the-number">
        <p class="turn">{asked?.add === undefined ? 'Leave the dial at' : 'Turn the dial to'}</p>
        <p class={`huge long-${says.dial(dial).length}`}>{says.dial(dial)}</p>
        <p class="do">
          {asked ? `${asked.word} ` : ''}
          {springs > 0 ? `${countOf(springs)} spring passes` : 'the stroke'}, then measure
          {plan.lanes.length > 1 ? '; the same in every lane' : ''}
          {plan.keyways > 1 ? '; the same in every slot' : ''}
        </p>
      </div>
      <Blank
        key={`add-${dial}`}
        name="add"
        label={`Measured ${measuredAs(now)}, ${now.unit}`}
        unit={now.unit}
        large
        dial={dial}
      />
      <Told answer={answer} />
      {answer?.is === 'hold' && <Go>Go on: file the edges</Go>}
      {answer && answer.is === 'care' && (
        <button type="button" class="go" onClick={again}>
          {answer.add === undefined ? 'Spring passes, and measure again' : `Go on to ${says.dial(answer.add)}`}
        </button>
      )}
      {answer?.offers?.includes('desk') && (
        <a class="offer" href="#desk">
          Back to the desk: what can still be done
        </a>
      )}
      {!answer && before && (
        <button type="button" class="offer" onClick={() => goTo('measure')}>
          Go on without
        </button>
      )}
      <Back />
    </>
  )
}

const cellText = (cell: Cell): string =>
  cell === undefined
    ? ''
    : isWords(cell)
      ? plain(cell)
      : 'number' in cell
        ? cell.number
        : 'tick' in cell
          ? plain(cell.tick)
          : ''

const tablesIn = (blocks: readonly Block[]): readonly Table[] =>
  blocks.flatMap((block) =>
    block.block === 'table'
      ? [block]
      : block.block === 'columns'
        ? block.columns.flatMap((each) => tablesIn(each.blocks))
        : [],
  )
const ticksIn = (blocks: readonly Block[]): readonly CardTick[] =>
  blocks.flatMap((block) =>
    block.block === 'ticks'
      ? block.ticks
      : block.block === 'columns'
        ? block.columns.flatMap((each) => ticksIn(each.blocks))
        : [],
  )
const notesIn = (blocks: readonly Block[]): readonly string[] =>
  blocks.flatMap((block) =>
    block.block === 'paragraph'
      ? [plain(block.words)]
      : block.block === 'columns'
        ? block.columns.flatMap((each) => notesIn(each.blocks))
        : [],
  )

/** The card's own measuring table: near end and far end of every line, and the verdict. */
export const Measure = ({ now }: { now: Job }) => {
  const blocks = measureTheSlot(now.design, now.says, { pin: false, boxes: true })
  const rows = tablesIn(blocks).flatMap(({ rows: all }) => all.flatMap((row) => ('cells' in row ? [row.cells] : [])))
  const ticks = ticksIn(blocks).filter(({ words }) => !['good', 'not good, by'].includes(plain(words).trim()))
  const heading = blocks
    .flatMap((block) => (block.block === 'columns' ? block.columns.flatMap((each) => each.blocks) : [block]))
    .find((block) => block.block === 'heading')
  return (
    <>
      <Heading id="screen">{heading?.block === 'heading' ? heading.text : 'Measure the slot'}</Heading>
      <div class="ticks">
        <Tick name="edges-filed">First: the edges filed, at both ends</Tick>
      </div>
      {notesIn(blocks).map((words) => (
        <p key={words} class="small">
          {words}
        </p>
      ))}
      {rows.map((cells) => {
        const [name = '', go = '', noGo = ''] = cells.map(cellText)
        const boxes = cells.filter((cell) => typeof cell === 'object' && !isWords(cell) && 'write' in cell).length
        return (
          <fieldset key={name} class="line-of">
            <legend>
              {name}{' '}
              <span class="limits">
                go {go}, no go {noGo}
              </span>
            </legend>
            <div class="four">
              <Blank
                name={`measured-${name}-near`}
                label={boxes > 1 ? 'Near end' : 'Measured'}
                unit={now.unit}
                signed
              />
              {boxes > 1 && <Blank name={`measured-${name}-far`} label="Far end" unit={now.unit} signed />}
            </div>
          </fieldset>
        )
      })}
      <div class="ticks">
        {ticks.map(({ words }) => (
          <Tick key={plain(words)} name={`good-${plain(words)}`}>
            <Said words={capitalWords(words)} />
          </Tick>
        ))}
      </div>
      <Go>Done</Go>
      <Back />
    </>
  )
}

const capitalWords = (words: CardTick['words']): CardTick['words'] =>
  typeof words === 'string' ? words.charAt(0).toUpperCase() + words.slice(1) : words

/** What was measured goes with the job. */
export const Done = ({ now }: { now: Job }) => (
  <>
    <Heading id="screen">Done</Heading>
    <p class="do">
      Everything ticked and measured is kept in this browser under {now.design.spec.name}. Take it along as a file.
    </p>
    <Exports now={now} />
    <button
      type="button"
      class="offer"
      onClick={() => {
        if (confirm('Begin this job again? What was ticked and measured is then gone from this browser.')) beginAgain()
      }}
    >
      Begin the job again
    </button>
    <Back />
  </>
)

export const Exports = ({ now }: { now: Job }) => (
  <p class="exports">
    <button type="button" class="link" onClick={() => exportCsv(now)}>
      Readings, CSV
    </button>
    <button type="button" class="link" onClick={() => exportYaml(now)}>
      Job with its readings, YAML
    </button>
    <button type="button" class="link" onClick={() => exportJson(now)}>
      Job with its readings, JSON
    </button>
  </p>
)
