import type { Spec } from '../spec/spec.ts'
import { type AcrossNoGo, acrossNoGoOf } from './across-no-go.ts'
import type { Reasoned } from './basis.ts'
import { type BitTemplates, bitTemplatesOf } from './bit-templates.ts'
import { type BorePlug, borePlugOf } from './bore-plug.ts'
import { type DrillJig, drillJigOf } from './drill-jig.ts'
import { type HubRing, hubRingOf } from './hub-ring.ts'
import { type IndexPlate, indexPlateOf } from './index-plate.ts'
import { type PressSpacer, pressSpacerOf } from './press-spacer.ts'
import { type Pusher, pusherOf } from './pusher.ts'
import { type SettingStep, settingStepOf } from './setting-step.ts'
import type { CutterBar, GroundBar, GuideBushing, Section, ToolBit } from './types.ts'
import { type WidthGauge, widthGaugeOf } from './width-gauge.ts'

/** Gauges and small shop aids beside the tooling itself; what a job has no use for is absent. */
export interface Aids {
  readonly bitTemplates?: BitTemplates
  readonly borePlug?: BorePlug
  readonly acrossNoGo?: AcrossNoGo
  readonly widthGauge?: WidthGauge
  readonly hubRing?: HubRing
  readonly settingStep?: SettingStep
  readonly indexPlate?: IndexPlate
  readonly drillJig?: DrillJig
  readonly pressSpacer?: PressSpacer
  readonly pusher?: Pusher
}

/** Every aid that the job has, each with its reasons. */
export const aidsOf = (
  spec: Spec,
  section: Section,
  inBore: CutterBar | GroundBar | undefined,
  bushing: GuideBushing | undefined,
  bit: ToolBit | undefined,
): { readonly [Name in keyof Aids]-?: Reasoned<NonNullable<Aids[Name]>> | undefined } => {
  // What holds a bit that can be set; one piece has nothing to set, and no hole to drill.
  const broach = spec.tooling.press?.broach
  const bar = inBore?.form === 'one piece' ? undefined : inBore
  return {
    bitTemplates: bit && bitTemplatesOf(spec, bit),
    borePlug: borePlugOf(spec, section),
    acrossNoGo: acrossNoGoOf(spec, section),
    widthGauge: widthGaugeOf(spec, section),
    hubRing: hubRingOf(spec, section, inBore),
    settingStep: bar && settingStepOf(spec, bar),
    // Under a press alone the bushing's own key turns the work on.
    indexPlate: inBore && indexPlateOf(spec, section),
    drillJig: bar && drillJigOf(spec, bar),
    pressSpacer: pressSpacerOf(spec, section, bushing, inBore),
    pusher: bushing && broach && pusherOf(spec, broach, bushing, section),
  }
}
