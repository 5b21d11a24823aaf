import { useEffect, useRef, useState } from 'preact/hooks'
import { onPage } from '../../figures/figure.ts'
import { longInfeed } from '../../figures/long-infeed.ts'
import { svgOf } from '../../figures/svg.ts'
import type { Job } from './job.ts'

/** The infeed drawn long, the dial's cursor on it and the slot's behind. */
export const Rule = ({ now, infeed, lane }: { now: Job; infeed: number; lane: number }) => {
  const place = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  useEffect(() => {
    if (!place.current) return undefined
    const seen = new ResizeObserver(([entry]) => {
      if (entry) setWidth(Math.floor(entry.contentRect.width))
    })
    seen.observe(place.current)
    return () => seen.disconnect()
  }, [])
  const svg = width < 100 ? '' : svgOf(longInfeed(now.design, onPage(width), { infeed, lane, alone: true }))
  return <div ref={place} class="picture rule-here" dangerouslySetInnerHTML={{ __html: svg }} />
}
