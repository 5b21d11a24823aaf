import { bars } from '../looked-at.ts'

/** How far a finding stands from its limit, drawn. The figures under it say the same in words. */
export const MarginBar = ({ rule }: { rule: string }) => (
  <div class="margin" aria-hidden="true" dangerouslySetInnerHTML={{ __html: bars.value[rule] ?? '' }} />
)
