import { openInvented } from '../coming-and-going.ts'
import { told } from '../job.ts'

/** Said while nothing is told: jobs made up for show. */
export const First = () =>
  told() ? null : (
    <p class="first">
      Or open one made up for show:{' '}
      <button type="button" class="link" onClick={() => void openInvented('cider-mill-pulley')}>
        a cider-mill pulley
      </button>
      ,{' '}
      <button type="button" class="link" onClick={() => void openInvented('winch-drum-gear')}>
        a boat-winch gear, in inches
      </button>
      ,{' '}
      <button type="button" class="link" onClick={() => void openInvented('chaff-cutter-clutch')}>
        a chaff-cutter clutch, six splines
      </button>
      . Or drop a spec anywhere on the page.
    </p>
  )
