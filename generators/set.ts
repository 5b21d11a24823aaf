import { acrossNoGo } from './across-no-go.ts'
import { borePlug } from './bore-plug.ts'
import { bitStickOut } from './bit-stick-out.ts'
import { bitTemplates } from './bit-templates.ts'
import { cutterBar } from './cutter-bar.ts'
import { drillJig } from './drill-jig.ts'
import { groundBar } from './ground-bar.ts'
import { guideBushing } from './guide-bushing.ts'
import { hubRing } from './hub-ring.ts'
import { indexPlate } from './index-plate.ts'
import type { Part } from './part.ts'
import { plugGauge } from './plug-gauge.ts'
import { pressSpacer } from './press-spacer.ts'
import { settingStep } from './setting-step.ts'
import { shimPack } from './shim-pack.ts'
import { toolBit } from './tool-bit.ts'
import { widthGauge } from './width-gauge.ts'

/**
 * Every part there is, in the order they are made: the bushing before the shims that are ground to it, the bar's jig before the bar and the bar
 * before its bit, gauges last.
 */
export const parts: readonly Part[] = [
  guideBushing,
  shimPack,
  pressSpacer,
  drillJig,
  cutterBar,
  groundBar,
  toolBit,
  bitTemplates,
  bitStickOut,
  settingStep,
  indexPlate,
  plugGauge,
  borePlug,
  acrossNoGo,
  widthGauge,
  hubRing,
]
