import { cutterBar } from './cutter-bar.ts'
import { guideBushing } from './guide-bushing.ts'
import type { Part } from './part.ts'
import { plugGauge } from './plug-gauge.ts'
import { shimPack } from './shim-pack.ts'
import { toolBit } from './tool-bit.ts'

/** Every part there is, in the order they are made: the bushing before the shims that are ground to it, the bar before its bit. */
export const parts: readonly Part[] = [guideBushing, shimPack, cutterBar, toolBit, plugGauge]
