import type { Design } from '../../design.ts'
import type { Complaint } from '../../spec/complaint.ts'
import type { Units } from '../../spec/spec.ts'
import type { BoreAs, BoreAsked } from './bore-as.ts'
import type { Carried } from './link.ts'
import type { Told } from './rules.ts'
import type { SaidIn } from './said-in.ts'

/** A job as the page hands it over. */
export interface JobAsked {
  /** The text that the job was opened from, and the document as it stands now. */
  readonly text: string
  readonly document: unknown
  /** The shop file that it names, as text. */
  readonly shop?: string
  readonly shown: Units
  /** Drawn before it is judged, and told as a step, so that the picture follows the key. */
  readonly looked?: Looked
}

/** How the figures are looked at: after so many passes, all where left out; so many px wide; which of them. */
export interface Looked {
  readonly passes?: number
  readonly width: number
  readonly pictures: readonly PictureName[]
}

/** One pass of the cut. */
export interface PassRun {
  readonly lane: number
  /** Which setting of the projection. */
  readonly setting: number
  /** From the dial's nought, mm, and what the dial then reads. */
  readonly infeed: number
  readonly reading: number
  /** What is to be measured after it, mm; absent where it is no gate. */
  readonly gate?: number
}

/** A figure as the page holds it. */
export interface Picture {
  readonly svg: string
  readonly title: string
  readonly says: string
  readonly sizes: readonly { readonly of: string; readonly name: string; readonly said: string }[]
}

/** Which figures the page shows. */
export type PictureName = 'section' | 'lengths' | 'infeed' | 'lengthwise' | 'press' | 'pressLengthwise'

export interface Drawn {
  readonly pictures: Readonly<Partial<Record<PictureName, Picture>>>
  /** Where the cut stands, in a line, and for the slider. */
  readonly spoken: string
  readonly dial: string
}

/** What followed from a job. */
export interface Outcome {
  readonly complaints: readonly Complaint[]
  /** Absent where there are complaints. */
  readonly design?: Design
  /** Reasons and ways out in the units shown, where these are not the job's. */
  readonly said: SaidIn
  /** Of a job that is only half told: its section, without a bar. */
  readonly half?: Readonly<Partial<Record<PictureName, Picture>>>
  /** The cut, pass by pass, from first touch to the floor of the last lane; empty where nothing is cut by a bar. */
  readonly passes: readonly PassRun[]
  /** The spec as text, and packed for an address. */
  readonly text: string
  readonly link: string
}

export type Opened =
  | { readonly document: unknown; readonly complaints: readonly Complaint[]; readonly names?: string }
  | { readonly unreadable: readonly Complaint[] }

/** What the working hand answers. */
export type Works = {
  /** A text parsed, and what is wrong with it as a spec. `names`: the shop file that it asks for. */
  readonly open: { readonly asks: { readonly text: string; readonly shop?: string }; readonly answers: Opened }
  readonly unpack: { readonly asks: string; readonly answers: Carried | undefined }
  readonly work: { readonly asks: JobAsked; readonly answers: Outcome }
  /** For each path that is held, what would be chosen were it let go. */
  readonly free: {
    readonly asks: JobAsked & { readonly paths: readonly string[] }
    readonly answers: Readonly<Record<string, { readonly worked: number | string; readonly why?: string }>>
  }
  /** A bore as measured at the machine: whether it may be gone on with, and what works the job for it. */
  readonly boreAs: { readonly asks: JobAsked & { readonly bore: BoreAsked }; readonly answers: BoreAs }
  /** The job that was worked out last, drawn after so many passes, so many px wide. */
  readonly draw: {
    readonly asks: Looked & { readonly shown: Units }
    readonly answers: Drawn
  }
  /** For each finding a bar that shows its margin. */
  readonly margins: {
    readonly asks: { readonly width: number; readonly rules: readonly string[] }
    readonly answers: Readonly<Record<string, string>>
  }
  readonly rules: { readonly asks: undefined; readonly answers: Readonly<Record<string, Told>> }
  readonly offered: {
    readonly asks: undefined
    readonly answers: { readonly materials: readonly string[]; readonly threads: readonly string[] }
  }
}
