import { describe, expect, it } from 'vitest'
import { document, nothingTold, open, tell, undo } from '../../src/page/job.ts'

const tooling = (): unknown => (document.value as { readonly tooling?: unknown }).tooling

describe('what is told', () => {
  it('a press of which nothing is told is not asked for', () => {
    open(nothingTold)
    tell({ 'tooling.bar.behind': 30 })
    expect(tooling()).toEqual({ bar: { behind: 30 } })
    tell({ 'tooling.press.broach.pilot': 20 })
    expect(tooling()).toEqual({ bar: { behind: 30 }, press: { broach: { pilot: 20 } } })
    tell({ 'tooling.press.broach.pilot': null })
    expect(tooling()).toEqual({ bar: { behind: 30 } })
    undo()
    tell({ 'tooling.press.broach': null })
    expect(tooling()).toEqual({ bar: { behind: 30 } })
  })

  it('both ways stay open where a broach is told first, and a press that was asked for by name stays', () => {
    open(nothingTold)
    tell({ 'tooling.press.broach.pilot': 20 })
    expect(tooling()).toEqual({ bar: {}, press: { broach: { pilot: 20 } } })
    open({ text: '', document: { name: 'job', units: 'mm', tooling: { press: {} } } })
    tell({ 'bore.diameter': 25 })
    expect(tooling()).toEqual({ press: {} })
  })
})
