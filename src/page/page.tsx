import { AtMachine } from './parts/at-machine.tsx'
import { Bore } from './parts/bore.tsx'
import { Offered } from './parts/blank.tsx'
import { First } from './parts/first.tsx'
import { Follows } from './parts/follows.tsx'
import { Foot } from './parts/foot.tsx'
import { Handle } from './parts/handle.tsx'
import { Head } from './parts/head.tsx'
import { Changed, Notices } from './parts/notices.tsx'
import { OldAndNew } from './parts/old-and-new.tsx'
import { Order } from './parts/order.tsx'
import { OtherWay } from './parts/other-way.tsx'
import { Chosen, Known } from './parts/told.tsx'
import { ToMake } from './parts/to-make.tsx'
import { Verdict } from './parts/verdict.tsx'
import { atMachine } from './where.ts'

export const Page = () => (atMachine.value ? <AtMachine /> : <Desk />)

/** The whole page at the desk. Read, tabbed and seen in one order at every width. */
const Desk = () => (
  <>
    <a class="skip" href="#bore">
      To the bore
    </a>
    <Head />
    <main>
      <Notices />
      <Verdict />
      <OldAndNew />
      <First />
      <div class="bench">
        <div class="left">
          <Known />
          <Chosen />
          <Changed />
        </div>
        <Bore />
        <div class="right">
          <Follows />
          <Handle />
        </div>
      </div>
      <Order />
      <OtherWay />
      <ToMake />
    </main>
    <Foot />
    <Offered />
  </>
)
